using Tarry.Metrology;

namespace Tarry.Reports.Wording;

/// <summary>How values of a kind are read out: their unit, whether they carry a sign, and how many decimals they have at most.</summary>
/// <typeparam name="T">The kind of value.</typeparam>
public sealed record Quantity<T>(string Unit, Func<T, double> InUnit, bool HasSign, int MostDecimals = 3)
    where T : struct, IComparable<T>;

/// <summary>The kinds of value that a report shows.</summary>
public static class Quantity
{
    /// <summary>A latency.</summary>
    public static Quantity<Latency> Latency { get; } = new("ms", value => value.Milliseconds, HasSign: false);

    /// <summary>A difference between two latencies.</summary>
    public static Quantity<LatencyDifference> Difference { get; } = new("ms", value => value.Milliseconds, HasSign: true);

    /// <summary>A standard deviation or a spread: a difference that has no direction.</summary>
    public static Quantity<LatencyDifference> Scatter { get; } = new("ms", value => value.Milliseconds, HasSign: false);

    /// <summary>A report interval, which press times tell to the nanosecond.</summary>
    public static Quantity<LatencyDifference> ReportInterval { get; } = new("ms", value => value.Milliseconds, HasSign: false, MostDecimals: 6);

    /// <summary>The time between the reports of a stream, which captures tell to the nanosecond.</summary>
    public static Quantity<Latency> StreamInterval { get; } = new("ms", value => value.Milliseconds, HasSign: false, MostDecimals: 6);

    /// <summary>A share, in per cent.</summary>
    public static Quantity<Proportion> Share { get; } = new("%", value => value.Value * 100, HasSign: false);
}
