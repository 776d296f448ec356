using Tarry.Findings.ReportIntervals;
using Tarry.Metrology;

namespace Tarry.Reports.Wording;

/// <summary>How many reports a second a device sends, from its report interval; how wrong the clock of the data may be is in it.</summary>
/// <param name="Hz">Reports a second.</param>
/// <param name="Low">The least of its interval.</param>
/// <param name="High">The most of its interval.</param>
public sealed record ReportRate(double Hz, double Low, double High)
{
    // A full-speed USB function may be off by 0.25 % (USB 2.0, 7.1.11).
    private const double DeviceClock = 0.0025;

    /// <summary>The rate of a finding; null where no interval is claimed.</summary>
    /// <remarks>Relative half-widths of the interval and of the clock add in quadrature, as independent ones do.</remarks>
    public static ReportRate? Of(ReportIntervalFinding? finding)
    {
        if (finding?.Interval is not { } interval)
        {
            return null;
        }

        var milliseconds = interval.Value.Milliseconds;
        var own = (interval.Interval.High.Milliseconds - interval.Interval.Low.Milliseconds) / 2 / milliseconds;
        var clock = finding.Clock.HalfWidthPpm / 1e6;
        var (hz, part) = (1000 / milliseconds, Math.Sqrt((own * own) + (clock * clock)));
        return new(hz, hz * (1 - part), hz * (1 + part));
    }

    /// <summary>The rate with the digits that its interval supports.</summary>
    public string Value => Numbers.Fixed(Hz, Decimals);

    /// <summary>Its interval.</summary>
    public string Bounds => $"{Numbers.Fixed(Low, Decimals)}{Numbers.NoBreakSpace}to{Numbers.NoBreakSpace}{Numbers.Fixed(High, Decimals)}";

    private int Decimals => Numbers.Decimals(High - Low);

    /// <summary>Whether it is a stated rate, as near as a device's own clock is.</summary>
    public bool Is(double statedHz) => Low <= statedHz * (1 + DeviceClock) && High >= statedHz * (1 - DeviceClock);
}
