using System.Numerics;

namespace Tarry.Statistics.Deconvolution;

/// <summary>Weights on an even grid, ready to be slid along values on the same grid.</summary>
/// <remarks>
/// Direct sums over the weights that are not zero: a measured kernel is short, and a rare outlier in it costs one weight.
/// Sums run in the order of the weights in every lane and without fused multiply-add, so that every machine finds the same bits.
/// </remarks>
public sealed class ConvolutionKernel
{
    private const int Vectors = 4;
    private readonly int[] offsets;
    private readonly double[] weights;

    /// <summary>A kernel from its weights.</summary>
    /// <exception cref="ArgumentException">There is no weight, or one is not finite.</exception>
    public ConvolutionKernel(ReadOnlySpan<double> weights)
    {
        Argument.RequireCount(weights, 1, nameof(weights));
        Argument.RequireFinite(weights, nameof(weights));
        Length = weights.Length;
        var (at, kept) = (new List<int>(), new List<double>());
        for (var i = 0; i < weights.Length; i++)
        {
            if (weights[i] != 0)
            {
                at.Add(i);
                kept.Add(weights[i]);
            }
        }

        offsets = [.. at];
        this.weights = [.. kept];
    }

    private ConvolutionKernel(int length, int[] offsets, double[] weights) => (Length, this.offsets, this.weights) = (length, offsets, weights);

    /// <summary>How many grid points it spans, zeros included.</summary>
    public int Length { get; }

    /// <summary>The same weights from the other end.</summary>
    public ConvolutionKernel Reversed() => new(
        Length,
        [.. offsets.Reverse().Select(offset => Length - 1 - offset)],
        [.. weights.Reverse()]);

    /// <summary>The convolution with values: <c>result[m] = sum over j of values[m - j] weights[j]</c>, of full length.</summary>
    public double[] Convolve(ReadOnlySpan<double> values)
    {
        var padded = new double[values.Length + (2 * (Length - 1))];
        values.CopyTo(padded.AsSpan(Length - 1));
        var result = new double[values.Length + Length - 1];
        Reversed().Correlate(padded, result);
        return result;
    }

    /// <summary>The correlation with values: <c>result[i] = sum over j of values[i + j] weights[j]</c>.</summary>
    /// <param name="values">The values, as many as the results and <see cref="Length"/> - 1 more.</param>
    /// <param name="result">Filled; must not overlap the values.</param>
    /// <exception cref="ArgumentException">The lengths do not fit.</exception>
    public void Correlate(ReadOnlySpan<double> values, Span<double> result)
    {
        Argument.RequireSameLength(values.Length, result.Length + Length - 1, nameof(values), $"{nameof(result)} with the kernel's overhang");
        var block = Vectors * Vector<double>.Count;
        if (result.Length < block)
        {
            OneByOne(values, result);
            return;
        }

        for (var at = 0; at + block <= result.Length; at += block)
        {
            Block(values[at..], result[at..]);
        }

        // The last block overlaps the one before: it finds the same numbers again.
        Block(values[(result.Length - block)..], result[^block..]);
    }

    private void Block(ReadOnlySpan<double> values, Span<double> result)
    {
        var width = Vector<double>.Count;
        var (a, b, c, d) = (Vector<double>.Zero, Vector<double>.Zero, Vector<double>.Zero, Vector<double>.Zero);
        for (var i = 0; i < offsets.Length; i++)
        {
            var from = values.Slice(offsets[i], Vectors * width);
            var weight = new Vector<double>(weights[i]);
            a += weight * new Vector<double>(from);
            b += weight * new Vector<double>(from[width..]);
            c += weight * new Vector<double>(from[(2 * width)..]);
            d += weight * new Vector<double>(from[(3 * width)..]);
        }

        a.CopyTo(result);
        b.CopyTo(result[width..]);
        c.CopyTo(result[(2 * width)..]);
        d.CopyTo(result[(3 * width)..]);
    }

    private void OneByOne(ReadOnlySpan<double> values, Span<double> result)
    {
        for (var at = 0; at < result.Length; at++)
        {
            var sum = 0.0;
            for (var i = 0; i < offsets.Length; i++)
            {
                sum += weights[i] * values[at + offsets[i]];
            }

            result[at] = sum;
        }
    }
}
