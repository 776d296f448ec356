namespace Tarry.Statistics.SlotGrid;

/// <summary>Times in seconds with a weight each: what a spectrum is taken of.</summary>
internal sealed class WeightedTimes
{
    private const int FewestWeights = 15;

    public WeightedTimes(double[] times, double[] weights, int count)
    {
        Times = times;
        Weights = weights;
        Count = count;
        var (sum, squares, used) = (0.0, 0.0, 0);
        for (var i = 0; i < count; i++)
        {
            sum += times[i];
            squares += weights[i] * weights[i];
            used += weights[i] != 0 ? 1 : 0;
        }

        Mean = count > 0 ? sum / count : 0;
        SquaredWeights = squares;
        IsUsable = used >= FewestWeights;
    }

    public double[] Times { get; }

    public double[] Weights { get; }

    public int Count { get; }

    public double Mean { get; }

    public double SquaredWeights { get; }

    /// <summary>Whether there are enough weights other than zero for a spectrum.</summary>
    public bool IsUsable { get; }
}
