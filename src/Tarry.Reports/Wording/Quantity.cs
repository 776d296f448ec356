using Tarry.Metrology;

namespace Tarry.Reports.Wording;

/// <summary>How values of a kind are read out: their unit, whether they carry a sign, and how many decimals they have at most.</summary>
/// <typeparam name="T">The kind of value.</typeparam>
internal sealed record Quantity<T>(string Unit, Func<T, double> InUnit, bool Signed, int MostDecimals = 3)
    where T : struct, IComparable<T>;

/// <summary>The kinds of value that a report shows.</summary>
internal static class Quantity
{
    public static Quantity<Latency> Latency { get; } = new("ms", value => value.Milliseconds, Signed: false);

    public static Quantity<LatencyDifference> Difference { get; } = new("ms", value => value.Milliseconds, Signed: true);

    /// <summary>A standard deviation or a spread: a difference that has no direction.</summary>
    public static Quantity<LatencyDifference> Scatter { get; } = new("ms", value => value.Milliseconds, Signed: false);

    /// <summary>A report interval, which press times tell to the nanosecond.</summary>
    public static Quantity<LatencyDifference> ReportInterval { get; } = new("ms", value => value.Milliseconds, Signed: false, MostDecimals: 6);

    public static Quantity<Proportion> Share { get; } = new("%", value => value.Value * 100, Signed: false);
}
