using Tarry.Metrology;
using Tarry.Statistics.Distributions;

namespace Tarry.Statistics.Shapes;

/// <summary>A distribution of latencies, in milliseconds.</summary>
/// <remarks>
/// Both tails are computed from the side on which they are small, so that differences of them, the probabilities of bins,
/// keep their digits.
/// </remarks>
public abstract class LatencyShape
{
    /// <summary>The family that it belongs to.</summary>
    public abstract ShapeFamily Family { get; }

    /// <summary>Its parameters by name, with the unit in the name.</summary>
    public abstract IReadOnlyList<KeyValuePair<string, double>> Parameters { get; }

    /// <summary>The mean, in milliseconds.</summary>
    public abstract double Mean { get; }

    /// <summary>The variance, in milliseconds squared.</summary>
    public abstract double Variance { get; }

    /// <summary>The standard deviation of the noise that blurs its edges, in milliseconds.</summary>
    internal abstract double NoiseSd { get; }

    /// <summary>The density at <paramref name="x"/>, per millisecond.</summary>
    public abstract double Density(double x);

    /// <summary>The probability of a latency at or below <paramref name="x"/>.</summary>
    public abstract double LowerTail(double x);

    /// <summary>The probability of a latency above <paramref name="x"/>.</summary>
    public abstract double UpperTail(double x);

    /// <summary>A latency drawn from it.</summary>
    public abstract double Draw(SeededGenerator generator);

    /// <summary>The latency that a share <paramref name="p"/> lies below.</summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="p"/> is not strictly between 0 and 1.</exception>
    public double Quantile(double p)
    {
        Argument.RequireLevel(p, nameof(p));
        var reach = Math.Sqrt(Variance);
        var low = Mean - reach;
        while (LowerTail(low) > p)
        {
            low -= reach *= 2;
        }

        var high = Mean + (reach = Math.Sqrt(Variance));
        while (LowerTail(high) < p)
        {
            high += reach *= 2;
        }

        return MonotoneRoot.Find(x => (Remainder(x, p), Density(x)), low, high, increasing: true);
    }

    /// <summary>The distribution function below the mean, and less one above it: its differences keep their digits on both sides.</summary>
    internal double SignedTail(double x) => x <= Mean ? LowerTail(x) : -UpperTail(x);

    private double Remainder(double x, double p) => p < 0.5 ? LowerTail(x) - p : 1 - p - UpperTail(x);
}
