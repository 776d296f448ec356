using Tarry.Findings.Samples;
using Tarry.Statistics.Descriptives;
using Tarry.Studies.Calibrations;

namespace Tarry.Findings.Budgets;

/// <summary>What stands between the truth and the latencies of one session.</summary>
internal sealed class SessionChain
{
    private readonly SessionSample session;
    private readonly (string Name, RigCalibration Calibration)? calibration;

    public SessionChain(SessionSample session, IReadOnlyDictionary<string, RigCalibration> calibrations)
    {
        this.session = session;
        calibration = session.Record.Calibration is { } name && calibrations.TryGetValue(name, out var found) ? (name, found) : null;
        Inputs = [.. Clock(), Tick(), .. Delays()];
    }

    /// <summary>The inputs that apply, each source at most once.</summary>
    public IReadOnlyList<BudgetInput> Inputs { get; }

    /// <summary>Whether a calibration holds for it.</summary>
    public bool IsCalibrated => calibration is not null;

    /// <summary>
    /// Whether rounding to ticks averages away. The mean of values of standard deviation s read to ticks of q is off by at most
    /// (q / pi) exp(-2 pi^2 (s / q)^2) beyond what all share: below 0.3 % of a tick from s = q / 2 (the first term of the Fourier
    /// series of the rounding error of a normal quantity).
    /// </summary>
    public bool IsDithered => session.Latencies.Count >= 2
        && 1000 * Moments.StandardDeviation(session.Latencies.InOrder) >= TickUs / 2;

    /// <summary>Whether an error of this source is one and the same in another session of the same sitting.</summary>
    public bool Shares(UncertaintySource source, SessionChain other) => source switch
    {
        // Two fits rest on different pings; two clocks that were not fitted are one clock.
        UncertaintySource.ClockRate => SameRig(other) && !IsFitted && !other.IsFitted,
        UncertaintySource.HostClock => session.Record.Host == other.session.Record.Host,
        UncertaintySource.Tick => SameRig(other) && IsDithered && other.IsDithered,
        UncertaintySource.ActuatorDelay => SameRig(other),
        UncertaintySource.ThresholdDelay or UncertaintySource.LoopBackDelay =>
            SameRig(other) && session.Record.Run?.Response == other.session.Record.Run?.Response && session.Record.Calibration == other.session.Record.Calibration,
        _ => false,
    };

    private double TickUs => session.Record.Segments.Max(segment => 1e6 / segment.TickHz);

    private bool IsFitted => session.Record.Segments.All(segment => segment.ClockFit is not null);

    private bool SameRig(SessionChain other) =>
        session.Record.Board == other.session.Record.Board
        && session.Record.Firmware == other.session.Record.Firmware
        && TickUs == other.TickUs;

    private IEnumerable<BudgetInput> Clock()
    {
        if (!IsFitted)
        {
            yield return RigClass.Clock;
            yield break;
        }

        var fits = session.Record.Segments.Select(segment => segment.ClockFit!).ToList();
        yield return BudgetInput.Known(
            UncertaintySource.ClockRate,
            "ppm",
            0,
            fits.Max(fit => fit.StandardUncertaintyPpm),
            Math.Max(1, fits.Min(fit => fit.Pings) - 2),
            "fitted against the host's clock in each session; the latencies are corrected for it");
        yield return RigClass.Host;
    }

    private BudgetInput Tick() => BudgetInput.Between(
        UncertaintySource.Tick, "us", -TickUs, TickUs, double.PositiveInfinity, "the counter is read to one tick");

    private IEnumerable<BudgetInput> Delays()
    {
        if (calibration is not { Calibration: var known, Name: var name })
        {
            yield return session.Record.Run?.Response switch
            {
                "light" => RigClass.LightThreshold,
                "edge" => RigClass.EdgeThreshold,
                "echo" => RigClass.EchoTransfer,
                _ => RigClass.Unstated,
            };
            yield return RigClass.Actuator;
            yield return RigClass.OwnReading;
            yield break;
        }

        if (known.Response == "edge")
        {
            yield return RigClass.EdgeThreshold;
        }

        if (!known.ThroughActuator)
        {
            yield return RigClass.Actuator;
        }

        yield return BudgetInput.Known(
            UncertaintySource.LoopBackDelay,
            "us",
            known.OwnDelayUs,
            known.OwnDelayStandardUncertaintyUs,
            known.DegreesOfFreedom,
            $"calibration {name}: loop by {known.Response}{(known.ThroughActuator ? " through the actuator" : "")}{(known.Response == "light" ? ", threshold delay in it" : "")}");
    }
}
