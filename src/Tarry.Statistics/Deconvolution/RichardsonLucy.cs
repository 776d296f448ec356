using System.Numerics;

namespace Tarry.Statistics.Deconvolution;

/// <summary>
/// Finds the density whose convolution with a known kernel is likeliest to give observed counts, by Richardson-Lucy iteration
/// from a flat start; stopped early it is smooth, run on it follows every chance lump.
/// </summary>
/// <remarks>
/// d(i) = d(i) / N sum over j of r(j) y(i + j) / m(i + j), with m = d * r, y the counts, N their sum, r the kernel, which sums to 1.
/// Each step keeps d non-negative and of mass 1, and never lowers the Poisson likelihood (it is expectation-maximisation).
/// W. H. Richardson, J. Opt. Soc. Am. 62, 55 (1972); L. B. Lucy, Astron. J. 79, 745 (1974); L. A. Shepp and Y. Vardi,
/// IEEE Trans. Med. Imaging 1, 113 (1982). Points that no count can reach are left out after the first step, and points of a
/// mass below 1e-12 later.
/// </remarks>
public sealed class RichardsonLucy
{
    private const double Negligible = 1e-12;
    private const double Least = 1e-300;
    private static readonly int[] Trimmed = [1, 10, 40, 160];

    private readonly ConvolutionKernel kernel;
    private readonly ConvolutionKernel reversed;
    private readonly double[] observed;
    private readonly double[] padded;
    private readonly double[] ratio;
    private readonly double[] factor;
    private readonly double total;
    private readonly int length;
    private List<(int Start, int End)> runs;

    /// <summary>Prepares the iteration.</summary>
    /// <param name="observed">Counts on the grid of the sum, not negative, of a sum above 0; they may be fractional.</param>
    /// <param name="kernel">The kernel, not negative, of sum 1.</param>
    /// <exception cref="ArgumentException">There are fewer counts than the kernel spans points, or no count.</exception>
    public RichardsonLucy(ReadOnlySpan<double> observed, ConvolutionKernel kernel)
    {
        ArgumentNullException.ThrowIfNull(kernel);
        Argument.RequireCount(observed, kernel.Length, nameof(observed));
        Argument.RequireFinite(observed, nameof(observed));
        this.observed = observed.ToArray();
        this.kernel = kernel;
        reversed = kernel.Reversed();
        total = this.observed.Sum();
        Argument.RequirePositive(total, $"the sum of {nameof(observed)}");
        length = observed.Length - kernel.Length + 1;
        padded = new double[length + (2 * (kernel.Length - 1))];
        padded.AsSpan(kernel.Length - 1, length).Fill(1.0 / length);
        ratio = new double[observed.Length];
        factor = new double[length];
        runs = [(0, length)];
    }

    /// <summary>How many steps were taken.</summary>
    public int Iterations { get; private set; }

    /// <summary>The mass at each point of the density's grid, whose points are fewer than the counts by the kernel's length less 1.</summary>
    public ReadOnlySpan<double> Density => padded.AsSpan(kernel.Length - 1, length);

    private Span<double> Writable => padded.AsSpan(kernel.Length - 1, length);

    /// <summary>Goes on until so many steps were taken in all.</summary>
    public void IterateTo(int iterations)
    {
        while (Iterations < iterations)
        {
            foreach (var (start, end) in runs)
            {
                Step(start, end);
            }

            Iterations++;
            if (Trimmed.Contains(Iterations))
            {
                Trim();
            }
        }
    }

    /// <summary>The mass that the convolution puts at each point of the counts' grid.</summary>
    public double[] Predicted()
    {
        var predicted = new double[observed.Length];
        foreach (var (start, end) in runs)
        {
            reversed.Correlate(padded.AsSpan(start, end - start + (2 * (kernel.Length - 1))), predicted.AsSpan(start, end - start + kernel.Length - 1));
        }

        return predicted;
    }

    private void Step(int start, int end)
    {
        var window = ratio.AsSpan(start, end - start + kernel.Length - 1);
        reversed.Correlate(padded.AsSpan(start, end - start + (2 * (kernel.Length - 1))), window);
        Divide(observed.AsSpan(start, window.Length), window);
        var factors = factor.AsSpan(start, end - start);
        kernel.Correlate(window, factors);
        var density = Writable[start..end];
        for (var i = 0; i < density.Length; i++)
        {
            density[i] *= factors[i] / total;
        }
    }

    private static void Divide(ReadOnlySpan<double> counts, Span<double> predicted)
    {
        var width = Vector<double>.Count;
        var least = new Vector<double>(Least);
        var i = 0;
        for (; i + width <= counts.Length; i += width)
        {
            (new Vector<double>(counts[i..]) / Vector.Max(new Vector<double>(predicted[i..]), least)).CopyTo(predicted[i..]);
        }

        for (; i < counts.Length; i++)
        {
            predicted[i] = counts[i] / Math.Max(predicted[i], Least);
        }
    }

    // Runs nearer than the kernel is long see each other's counts and stay one.
    private void Trim()
    {
        var density = Writable;
        var found = new List<(int Start, int End)>();
        var sum = 0.0;
        for (var i = 0; i < density.Length; i++)
        {
            if (density[i] < Negligible)
            {
                density[i] = 0;
                continue;
            }

            sum += density[i];
            if (found.Count > 0 && i - found[^1].End < kernel.Length)
            {
                found[^1] = (found[^1].Start, i + 1);
            }
            else
            {
                found.Add((i, i + 1));
            }
        }

        foreach (ref var mass in density)
        {
            mass /= sum;
        }

        runs = found;
    }
}
