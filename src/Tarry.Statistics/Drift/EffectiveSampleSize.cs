using System.Numerics;
using MathNet.Numerics.IntegralTransforms;
using Tarry.Statistics.Descriptives;

namespace Tarry.Statistics.Drift;

/// <summary>How many independent trials a session of dependent ones is worth for its mean.</summary>
/// <remarks>
/// n / (1 + 2 sum r_k), the sum cut by the initial monotone positive sequence of C. J. Geyer (Statist. Sci. 7, 1992);
/// autocorrelations by fast Fourier transform, n log n. At most n: a session whose trials balance each other is not
/// credited with more than it has.
/// </remarks>
public static class EffectiveSampleSize
{
    /// <summary>The effective number of trials, between 0 and n.</summary>
    /// <param name="inOrder">The values in capture order, two or more, finite; where all are equal the answer is n.</param>
    /// <exception cref="ArgumentException">There are too few values, or one is not finite.</exception>
    public static double Of(ReadOnlySpan<double> inOrder)
    {
        Argument.RequireCount(inOrder, 2, nameof(inOrder));
        var n = inOrder.Length;
        var products = LaggedProducts(inOrder);
        if (!(products[0].Real > 0) || inOrder.IndexOfAnyExcept(inOrder[0]) < 0)
        {
            return n;
        }

        var sum = 0.0;
        var previous = double.PositiveInfinity;
        for (var k = 0; k + 1 < n; k += 2)
        {
            var pair = (products[k].Real + products[k + 1].Real) / products[0].Real;
            if (pair <= 0)
            {
                break;
            }

            previous = Math.Min(pair, previous);
            sum += previous;
        }

        return Math.Min(n, n / Math.Max((2 * sum) - 1, 1.0 / n));
    }

    private static Complex[] LaggedProducts(ReadOnlySpan<double> inOrder)
    {
        var mean = Moments.Mean(inOrder);
        var padded = new Complex[2 * (int)BitOperations.RoundUpToPowerOf2((uint)inOrder.Length)];
        for (var i = 0; i < inOrder.Length; i++)
        {
            padded[i] = inOrder[i] - mean;
        }

        Fourier.Forward(padded, FourierOptions.Default);
        for (var i = 0; i < padded.Length; i++)
        {
            padded[i] = (padded[i].Real * padded[i].Real) + (padded[i].Imaginary * padded[i].Imaginary);
        }

        Fourier.Inverse(padded, FourierOptions.Default);
        return padded;
    }
}
