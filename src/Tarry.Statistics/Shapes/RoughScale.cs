using Tarry.Statistics.Quantiles;

namespace Tarry.Statistics.Shapes;

/// <summary>Where latencies lie and how far they reach, roughly: what fits start from.</summary>
internal sealed record RoughScale(double Low, double Median, double High, double RobustSd)
{
    /// <summary>The width of what holds nearly all of them.</summary>
    public double Width => (High - Low) / 0.96;

    public static RoughScale Of(ReadOnlySpan<double> sorted)
    {
        var low = SampleQuantile.Of(sorted, 0.02)!.Value;
        var high = SampleQuantile.Of(sorted, 0.98)!.Value;
        var middle = SampleQuantile.Of(sorted, 0.75)!.Value - SampleQuantile.Of(sorted, 0.25)!.Value;
        var floor = Math.Max(1e-3, 0.05 * (high - low));
        return new RoughScale(low, SampleQuantile.Of(sorted, 0.5)!.Value, Math.Max(high, low + 1e-3), Math.Max(floor, middle / 1.35));
    }
}
