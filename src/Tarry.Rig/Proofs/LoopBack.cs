using Tarry.Statistics.Descriptives;
using Tarry.Statistics.Uncertainty;
using Tarry.Studies.Calibrations;
using Tarry.Studies.Sessions;
using Tarry.Studies.Trials;

namespace Tarry.Rig.Proofs;

/// <summary>What came round the loop.</summary>
internal sealed class LoopBack
{
    private const int Fewest = 2;
    private readonly SessionData session;
    private readonly double[] delaysUs;

    public LoopBack(SessionData session)
    {
        this.session = session;
        delaysUs = [.. session.Trials.Where(trial => trial.Outcome == Outcome.Response).Select(Microseconds)];
    }

    /// <summary>How many presses.</summary>
    public int Trials => session.Trials.Count;

    public int Responses => delaysUs.Length;

    public int Missed => session.Trials.Count(trial => trial.Outcome == Outcome.Missed);

    public int Early => session.Trials.Count(trial => trial.Outcome == Outcome.Early);

    public int WithMoreEdges => session.Trials.Count(trial => trial.Flags.HasFlag(TrialFlags.Bounced));

    public ClockFitRecord? Clock => session.Record.Segments[^1].ClockFit;

    public double LeastUs => delaysUs.Min();

    public double GreatestUs => delaysUs.Max();

    /// <summary>
    /// The rig's own delay: the mean, whose standard uncertainty is s / sqrt(n) and, since the counter is read to one tick and that
    /// does not average away where all responses fall alike, a rectangular part of one tick. Null with too few responses.
    /// </summary>
    public RigCalibration? Calibration(ProofRequest request, ThresholdRange? thresholds, DateTimeOffset at)
    {
        if (delaysUs.Length < Fewest)
        {
            return null;
        }

        var tickHz = session.Record.Segments[^1].TickHz;
        var deviation = Moments.StandardDeviation(delaysUs);
        var uncertainty = ExpandedUncertainty.Of(
        [
            new(deviation / Math.Sqrt(delaysUs.Length), 1, delaysUs.Length - 1),
            new(TypeB.StandardUncertainty(1e6 / tickHz, UncertaintyDistribution.Rectangular), 1, double.PositiveInfinity),
        ]);
        return new RigCalibration(
            at,
            session.Record.Board!,
            session.Record.Firmware!,
            tickHz,
            request.Response,
            request.ThroughActuator,
            request.Response == "light" ? request.LightThreshold : null,
            thresholds,
            delaysUs.Length,
            Moments.Mean(delaysUs),
            uncertainty.Standard,
            Math.Min(uncertainty.DegreesOfFreedom, MostDegreesOfFreedom),
            deviation,
            Clock);
    }

    // JSON has no infinity, and beyond this a coverage factor no longer moves.
    private const double MostDegreesOfFreedom = 1e6;

    private double Microseconds(Trial trial)
    {
        var segment = session.Record.Segments[trial.Segment];
        return new Metrology.TimerClock(segment.TickHz, segment.ClockFit?.RateErrorPpm ?? 0).ToMicroseconds(trial.LatencyTicks!.Value);
    }
}
