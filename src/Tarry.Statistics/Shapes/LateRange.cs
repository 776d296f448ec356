namespace Tarry.Statistics.Shapes;

/// <summary>Where late responses are thought to lie: evenly from the median to beyond the latest.</summary>
internal readonly record struct LateRange(double From, double To)
{
    // So that one late response does not make a spike of density.
    private const double LeastReachMs = 10;
    private const double BeyondMs = 1;

    public static LateRange Of(double medianMs, double latestMs) => new(medianMs, Math.Max(latestMs, medianMs + LeastReachMs) + BeyondMs);

    /// <summary>The share of the range that lies between two latencies.</summary>
    public double Share(double low, double high) => Math.Max(0, Math.Min(high, To) - Math.Max(low, From)) / (To - From);
}
