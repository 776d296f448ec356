namespace Tarry.Statistics.Shapes;

/// <summary>Counts of latencies in cells, and how probable each cell is under a shape with late responses.</summary>
internal interface ILatencyCells
{
    ReadOnlySpan<double> Counts { get; }

    /// <summary>Computes the probability of each cell.</summary>
    void Probabilities(LatencyShape shape, double lateShare, Span<double> probabilities);
}
