using Tarry.Metrology;

namespace Tarry.Statistics.Deconvolution;

/// <summary>The density of a delay D from latencies L = D + R and measurements of R + S, S a wait uniform over a known slot.</summary>
/// <remarks>
/// L gets a wait of the same kind laid over it, L + S = D + (R + S), so that what was measured is the kernel as it stands: no
/// edge has to be sharpened twice. Bins of 0.1 ms; the kernel smoothed by a normal of 0.1 ms; <see cref="RichardsonLucy"/> with the
/// iterations that 4-fold <see cref="HeldOutIterations"/> choose. The band holds the middle of densities found alike from
/// resampled sessions and, within each, resampled trials of both.
/// Assumes that D, R and S are independent and that shifts between sessions were taken out before
/// (<see cref="SessionAlignment"/>). Edges come out blurred by about the sd of R's own noise, and the band does not hold them.
/// Accuracy: <c>docs/methods/device-only.md</c>.
/// </remarks>
public sealed class MeasuredKernelDeconvolution
{
    private const int Folds = 4;
    private const double Negligible = 1e-7;
    private const ulong FoldsPart = 0;
    private const ulong FirstReplicatePart = 1;

    private readonly DelayGrid grid;
    private readonly int[][] latencies;
    private readonly int[][] references;
    private readonly ulong seed;

    /// <summary>Prepares the deconvolution.</summary>
    /// <param name="latencies">L of each session, ms; no session empty.</param>
    /// <param name="references">R + S of the same sittings in the same order, ms; no session empty.</param>
    /// <param name="slotMs">The length of the slot that S is uniform over, ms, above 0.</param>
    /// <param name="seed">Of the folds and of what is resampled.</param>
    /// <exception cref="ArgumentException">There is no session, one is empty, or the numbers of sessions differ.</exception>
    public MeasuredKernelDeconvolution(IReadOnlyList<double[]> latencies, IReadOnlyList<double[]> references, double slotMs, ulong seed)
    {
        ArgumentNullException.ThrowIfNull(latencies);
        ArgumentNullException.ThrowIfNull(references);
        Argument.RequireAtLeast(latencies.Count, 1, nameof(latencies), "Give the latencies of at least one session.");
        Argument.RequireSameLength(latencies.Count, references.Count, nameof(latencies), nameof(references));
        foreach (var session in latencies.Concat(references))
        {
            Argument.RequireCount(session, 1, "a session");
            Argument.RequireFinite(session, "a session");
        }

        Argument.RequirePositive(slotMs, nameof(slotMs));
        grid = new DelayGrid([.. latencies.SelectMany(session => session)], [.. references.SelectMany(session => session)], slotMs);
        this.latencies = [.. latencies.Select(grid.SumBinsOf)];
        this.references = [.. references.Select(grid.KernelBinsOf)];
        this.seed = seed;
    }

    /// <summary>Finds the density and its band.</summary>
    /// <param name="replicates">How often the data are resampled for the band; 0 for a band of no width.</param>
    /// <param name="level">The nominal level of the band at each point.</param>
    public DeconvolvedDelay Find(int replicates, double level = 0.9)
    {
        Argument.RequireAtLeast(replicates, 0, nameof(replicates), "Give how often the data are resampled.");
        Argument.RequireLevel(level, nameof(level));
        var kernel = grid.Kernel(Counts(references, grid.KernelBins));
        var iterations = HeldOutIterations.Choose(InFolds(), kernel);
        var density = Density(Counts(latencies, grid.SumBins), kernel, iterations);
        var all = Enumerable.Range(0, replicates).Select(replicate => Resampled((ulong)replicate, iterations)).ToArray();
        var (low, high) = Band(density, all, level);
        var trials = latencies.Sum(session => session.Length);
        var beyond = latencies.Sum(session => session.Count(bin => bin == DelayGrid.Beyond)) / (double)trials;
        var first = Array.FindIndex(high, mass => mass > Negligible);
        var last = Array.FindLastIndex(high, mass => mass > Negligible);
        double[] PerMs(double[] masses) => [.. masses[first..(last + 1)].Select(mass => mass * (1 - beyond) / DelayGrid.StepMs)];
        return new DeconvolvedDelay(grid.MiddleOf(first), DelayGrid.StepMs, PerMs(density), PerMs(low), PerMs(high), iterations, beyond);
    }

    private double[] Density(double[] counts, ConvolutionKernel kernel, int iterations)
    {
        var fit = new RichardsonLucy(grid.WithSlotWait(counts), kernel);
        fit.IterateTo(iterations);
        return fit.Density.ToArray();
    }

    private List<double[]> InFolds()
    {
        var generator = SeededGenerator.ForPart(seed, FoldsPart);
        var folds = Enumerable.Range(0, Folds).Select(_ => new double[grid.SumBins]).ToList();
        foreach (var bin in latencies.SelectMany(session => session))
        {
            var fold = folds[generator.NextInt32(Folds)];
            if (bin != DelayGrid.Beyond)
            {
                fold[bin]++;
            }
        }

        return [.. folds.Select(grid.WithSlotWait)];
    }

    private double[] Resampled(ulong replicate, int iterations)
    {
        var generator = SeededGenerator.ForPart(seed, FirstReplicatePart + replicate);
        var counts = new double[grid.SumBins];
        var kernel = new double[grid.KernelBins];
        for (var i = 0; i < latencies.Length; i++)
        {
            var session = generator.NextInt32(latencies.Length);
            Draw(latencies[session], counts, generator);
            Draw(references[session], kernel, generator);
        }

        return Density(counts, grid.Kernel(kernel), iterations);
    }

    private static void Draw(int[] bins, double[] counts, SeededGenerator generator)
    {
        for (var i = 0; i < bins.Length; i++)
        {
            var bin = bins[generator.NextInt32(bins.Length)];
            if (bin != DelayGrid.Beyond)
            {
                counts[bin]++;
            }
        }
    }

    private static double[] Counts(int[][] sessions, int bins)
    {
        var counts = new double[bins];
        foreach (var bin in sessions.SelectMany(session => session))
        {
            if (bin != DelayGrid.Beyond)
            {
                counts[bin]++;
            }
        }

        return counts;
    }

    private static (double[] Low, double[] High) Band(double[] density, double[][] replicates, double level)
    {
        var (low, high) = (density.ToArray(), density.ToArray());
        if (replicates.Length == 0)
        {
            return (low, high);
        }

        var at = new double[replicates.Length];
        var outside = (1 - level) / 2 * (replicates.Length - 1);
        for (var i = 0; i < density.Length; i++)
        {
            for (var replicate = 0; replicate < at.Length; replicate++)
            {
                at[replicate] = replicates[replicate][i];
            }

            Array.Sort(at);
            low[i] = Math.Min(low[i], Between(at, outside));
            high[i] = Math.Max(high[i], Between(at, at.Length - 1 - outside));
        }

        return (low, high);
    }

    private static double Between(double[] sorted, double rank)
    {
        var below = (int)Math.Floor(rank);
        var above = Math.Min(below + 1, sorted.Length - 1);
        return sorted[below] + ((rank - below) * (sorted[above] - sorted[below]));
    }
}
