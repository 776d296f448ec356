using Tarry.Statistics.Lines;
using Tarry.Studies.Sessions;

namespace Tarry.Rig.ClockFit;

/// <summary>The rate error of the rig's timer against the host's clock, from pings.</summary>
/// <remarks>
/// Straight line, least squares: host time of the middle of each window = a + c x ticks; rate error = 1 / (c x tick_hz) - 1.
/// Host time is regressed on ticks because the error is in the host's window; the tick is stamped in the receive interrupt.
/// Only the quarter with the shortest round trips is used, for a window's middle is off by at most half its length; at
/// least eight. A way out that is steadily slower than the way back moves a and leaves the slope alone.
/// The standard uncertainty is that of the slope, with the residual's standard deviation not below that of one tick,
/// 1 / (tick_hz sqrt(12)) (JCGM 100:2008, 4.3.7 and H.3).
/// </remarks>
public sealed class RigClockFit
{
    /// <summary>With fewer pings nothing is fitted.</summary>
    public const int FewestPings = 8;

    /// <summary>Over a shorter span nothing is fitted.</summary>
    public const double ShortestSpanSeconds = 10;

    /// <summary>A greater rate error is no clock's: the nominal frequency is wrong, or the rig's time is not real. Nothing is fitted.</summary>
    public const double GreatestErrorPpm = 100_000;

    private readonly long tickHz;
    private readonly List<PingReading> pings = [];

    /// <summary>A fit for a timer.</summary>
    /// <param name="tickHz">Ticks a second as stated, more than zero.</param>
    /// <exception cref="ArgumentOutOfRangeException">The frequency is not positive.</exception>
    public RigClockFit(long tickHz)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(tickHz);
        this.tickHz = tickHz;
    }

    /// <summary>Adds a ping.</summary>
    /// <exception cref="ArgumentException">The answer came before the question.</exception>
    public void Add(PingReading ping)
    {
        if (!(ping.ReceivedSeconds >= ping.SentSeconds))
        {
            throw new ArgumentException($"The ping was answered {-ping.RoundTripSeconds} s before it was sent; use one host clock for both.", nameof(ping));
        }

        pings.Add(ping);
    }

    /// <summary>The fit, or null: not fitted. The pings are too few, span too little, or give what no clock can be.</summary>
    public ClockFitRecord? Fit()
    {
        var used = Shortest();
        if (used.Count < FewestPings)
        {
            return null;
        }

        // Differences from the first ping keep the sums small beside a counter that has run for days.
        var originSeconds = used[0].SentSeconds;
        var originTicks = used[0].Ticks;
        var nominal = used.ConvertAll(ping => (double)(ping.Ticks - originTicks) / tickHz);
        var host = used.ConvertAll(ping => ((ping.SentSeconds - originSeconds) + (ping.ReceivedSeconds - originSeconds)) / 2);
        var span = nominal.Max() - nominal.Min();
        if (span < ShortestSpanSeconds)
        {
            return null;
        }

        var line = StraightLine.Fit(nominal, host, leastDeviation: 1.0 / (tickHz * Math.Sqrt(12)));
        var slope = line.Slope;
        var errorPpm = ((1 / slope) - 1) * 1e6;
        return Math.Abs(errorPpm) > GreatestErrorPpm
            ? null
            : new ClockFitRecord(errorPpm, line.SlopeUncertainty / (slope * slope) * 1e6, nominal.Count, span);
    }

    /// <summary>In order of time, the pings whose round trip is within the shortest quarter, or the shortest eight.</summary>
    private List<PingReading> Shortest()
    {
        if (pings.Count < FewestPings)
        {
            return [];
        }

        var ordered = pings.Select(ping => ping.RoundTripSeconds).Order().ToList();
        var limit = ordered[Math.Max(FewestPings, pings.Count / 4) - 1];
        return pings.FindAll(ping => ping.RoundTripSeconds <= limit);
    }
}
