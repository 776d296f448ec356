namespace Tarry.Statistics.Deconvolution;

/// <summary>How many Richardson-Lucy iterations tell most about data that were held out.</summary>
/// <remarks>
/// For each fold the density is found from the other folds and scored by the log likelihood of the fold's counts, summed over the
/// folds. Taken is the smallest number whose sum lies within <see cref="Indifference"/> of the best: the sum is flat about its best
/// and the place of that a matter of chance, and more iterations than needed follow chance lumps
/// (docs/decisions/0007). Candidates are tried in ascending order until the sum lies <see cref="GiveUpBelow"/> under the best: it
/// then only falls. Cross-validation of likelihood: R. P. W. Duin, IEEE Trans. Computers C-25, 1175 (1976), from memory.
/// </remarks>
public static class HeldOutIterations
{
    // What one free parameter gains by chance: half of the mean of a chi-squared on one degree of freedom.
    private const double Indifference = 0.5;
    private const double GiveUpBelow = 3;
    private const double LeastMass = 1e-9;

    /// <summary>The numbers tried.</summary>
    public static IReadOnlyList<int> Candidates { get; } = [5, 10, 15, 20, 30, 40, 60, 80, 120, 160, 240, 320, 480, 640, 960];

    /// <summary>The number for counts in folds.</summary>
    /// <param name="folds">The counts of each fold, two or more, all on one grid.</param>
    /// <param name="kernel">The kernel, of sum 1.</param>
    /// <exception cref="ArgumentException">There are fewer than two folds, or one holds no count.</exception>
    public static int Choose(IReadOnlyList<double[]> folds, ConvolutionKernel kernel)
    {
        ArgumentNullException.ThrowIfNull(folds);
        Argument.RequireAtLeast(folds.Count, 2, nameof(folds), "What is held out must be judged by the rest.");
        var fits = folds.Select(fold => new RichardsonLucy(Others(folds, fold), kernel)).ToArray();
        var scores = new List<double>(Candidates.Count);
        foreach (var iterations in Candidates)
        {
            var score = 0.0;
            for (var i = 0; i < fits.Length; i++)
            {
                fits[i].IterateTo(iterations);
                score += LogLikelihood(folds[i], fits[i].Predicted());
            }

            scores.Add(score);
            if (score < scores.Max() - GiveUpBelow)
            {
                break;
            }
        }

        var enough = scores.Max() - Indifference;
        return Candidates[scores.FindIndex(score => score >= enough)];
    }

    private static double[] Others(IReadOnlyList<double[]> folds, double[] heldOut)
    {
        var sum = new double[heldOut.Length];
        foreach (var fold in folds.Where(fold => fold != heldOut))
        {
            for (var i = 0; i < sum.Length; i++)
            {
                sum[i] += fold[i];
            }
        }

        return sum;
    }

    private static double LogLikelihood(double[] counts, double[] predicted)
    {
        var sum = 0.0;
        for (var i = 0; i < counts.Length; i++)
        {
            if (counts[i] > 0)
            {
                sum += counts[i] * Math.Log(Math.Max(predicted[i], LeastMass));
            }
        }

        return sum;
    }
}
