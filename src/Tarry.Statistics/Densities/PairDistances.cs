using System.Numerics;

namespace Tarry.Statistics.Densities;

/// <summary>How many pairs of values lie how many bins apart, for sums over all pairs at the cost of the bins.</summary>
internal sealed class PairDistances
{
    private readonly double[] pairs;
    private readonly double binWidth;
    private readonly double count;

    public PairDistances(ReadOnlySpan<double> sorted, int bins)
    {
        count = sorted.Length;

        // Bins start at 0 and not at the smallest value, as in R, so that the result does not hang on one value;
        // they span slightly more than the range, so that the largest value has a bin.
        binWidth = (sorted[^1] - sorted[0]) * 1.01 / bins;
        var first = Math.Truncate(sorted[0] / binWidth);
        var counts = new double[bins];
        foreach (var value in sorted)
        {
            counts[(int)(Math.Truncate(value / binWidth) - first)]++;
        }

        pairs = new double[bins];
        for (var lag = 0; lag < bins; lag++)
        {
            pairs[lag] = SumOfProducts(counts.AsSpan(lag), counts.AsSpan(0, bins - lag));
        }

        pairs[0] = 0.5 * (pairs[0] - count);
    }

    /// <summary>The estimate of the integral of f f'''' at bandwidth h.</summary>
    public double FourthDerivative(double h) => Sum(h, static d => (d * d) - (6 * d) + 3, 3, 5);

    /// <summary>The estimate of the integral of f times its sixth derivative at bandwidth h.</summary>
    public double SixthDerivative(double h) => Sum(h, static d => (d * d * d) - (15 * d * d) + (45 * d) - 15, -15, 7);

    /// <summary>Whole numbers, so exact in any order and the same on every machine.</summary>
    private static double SumOfProducts(ReadOnlySpan<double> left, ReadOnlySpan<double> right)
    {
        var sums = Vector<double>.Zero;
        var i = 0;
        for (; i + Vector<double>.Count <= left.Length; i += Vector<double>.Count)
        {
            sums += new Vector<double>(left[i..]) * new Vector<double>(right[i..]);
        }

        var sum = Vector.Sum(sums);
        for (; i < left.Length; i++)
        {
            sum += left[i] * right[i];
        }

        return sum;
    }

    private double Sum(double h, Func<double, double> polynomial, double atZero, int power)
    {
        var sum = 0.0;
        for (var i = 0; i < pairs.Length; i++)
        {
            var u = i * binWidth / h;
            var square = u * u;
            if (square >= 1000)
            {
                break;
            }

            sum += Math.Exp(-0.5 * square) * polynomial(square) * pairs[i];
        }

        return ((2 * sum) + (count * atZero)) / (count * (count - 1) * Math.Pow(h, power) * Math.Sqrt(2 * Math.PI));
    }
}
