using Tarry.Statistics.Descriptives;
using Tarry.Statistics.Distributions;
using Tarry.Statistics.Quantiles;

namespace Tarry.Statistics.Comparisons;

/// <summary>
/// Variances of several conditions, each from few sessions, drawn towards what they have in common
/// (empirical Bayes; G. K. Smyth, Stat. Appl. Genet. Mol. Biol. 3, 2004).
/// </summary>
/// <remarks>
/// Each variance is taken as s0 F(d, d0): a scaled chi-squared whose true variance is inverse-gamma over conditions.
/// With e = ln s^2 - digamma(d/2) + ln(d/2) the excess v = var(e) - mean trigamma(d/2) gives d0 = 2 trigamma^-1(v) and
/// s0 = exp(mean e + digamma(d0/2) - ln(d0/2)); where v is not above 0 the variances differ by no more than chance, d0 is
/// infinite and s0 is their mean. The moderated variance is (d0 s0 + d s^2)/(d0 + d), and a t made with it has
/// min(d0 + d, sum of d) degrees of freedom. The same numbers as <c>limma::squeezeVar</c> 3.54 in R.
/// Assumes that conditions in one call are alike in kind: pool wire and radio apart where they plainly differ.
/// A variance of exactly 0 enters the prior as 1e-5 of the median variance; where that is 0 too, of the median of those
/// above 0 (limma takes the number 1, which depends on the unit).
/// </remarks>
public sealed class ModeratedVariance
{
    private readonly double[] posterior;
    private readonly double[] totalDegreesOfFreedom;

    private ModeratedVariance(double priorVariance, double priorDegreesOfFreedom, double[] posterior, double[] totalDegreesOfFreedom)
    {
        PriorVariance = priorVariance;
        PriorDegreesOfFreedom = priorDegreesOfFreedom;
        this.posterior = posterior;
        this.totalDegreesOfFreedom = totalDegreesOfFreedom;
    }

    /// <summary>The variance that the conditions have in common, s0; 0 where a single variance gives no prior.</summary>
    public double PriorVariance { get; }

    /// <summary>How many degrees of freedom the prior is worth, d0: 0 for no pooling, infinite for full pooling.</summary>
    public double PriorDegreesOfFreedom { get; }

    /// <summary>The moderated variance of each condition.</summary>
    public ReadOnlySpan<double> Posterior => posterior;

    /// <summary>The degrees of freedom of each moderated variance; 0 for a condition of one session that found no prior.</summary>
    public ReadOnlySpan<double> TotalDegreesOfFreedom => totalDegreesOfFreedom;

    /// <summary>Moderates variances.</summary>
    /// <param name="variances">The variance of each condition over its sessions, 0 or more.</param>
    /// <param name="degreesOfFreedom">The degrees of freedom of each, sessions less 1; 0 for a condition of one session, which takes the prior.</param>
    /// <exception cref="ArgumentException">There is no condition, the lengths differ, or a value is negative or not finite.</exception>
    public static ModeratedVariance Squeeze(ReadOnlySpan<double> variances, ReadOnlySpan<double> degreesOfFreedom)
    {
        Argument.RequireCount(variances, 1, nameof(variances));
        Argument.RequireSameLength(variances.Length, degreesOfFreedom.Length, nameof(variances), nameof(degreesOfFreedom));
        var known = new List<(double Variance, double DegreesOfFreedom)>(variances.Length);
        var sum = 0.0;
        for (var i = 0; i < variances.Length; i++)
        {
            Argument.RequireNotNegative(degreesOfFreedom[i], $"{nameof(degreesOfFreedom)}[{i}]");
            if (degreesOfFreedom[i] > 0)
            {
                Argument.RequireNotNegative(variances[i], $"{nameof(variances)}[{i}]");
                known.Add((variances[i], degreesOfFreedom[i]));
                sum += degreesOfFreedom[i];
            }
        }

        var (priorVariance, priorDegrees) = Prior(known);
        var posterior = new double[variances.Length];
        var total = new double[variances.Length];
        for (var i = 0; i < posterior.Length; i++)
        {
            posterior[i] = Moderate(variances[i], degreesOfFreedom[i], priorVariance, priorDegrees);
            total[i] = Math.Min(priorDegrees + degreesOfFreedom[i], sum);
        }

        return new ModeratedVariance(priorVariance, priorDegrees, posterior, total);
    }

    private static double Moderate(double variance, double degrees, double priorVariance, double priorDegrees) =>
        double.IsPositiveInfinity(priorDegrees) || degrees == 0 ? priorVariance
        : ((degrees * variance) + (priorDegrees * priorVariance)) / (degrees + priorDegrees);

    private static (double Variance, double DegreesOfFreedom) Prior(List<(double Variance, double DegreesOfFreedom)> known)
    {
        if (known.Count < 2)
        {
            return (0, 0);
        }

        var floor = SmallestVariance(known);
        if (floor == 0)
        {
            return (0, double.PositiveInfinity);
        }

        var logs = new double[known.Count];
        var expected = 0.0;
        var mean = 0.0;
        for (var i = 0; i < logs.Length; i++)
        {
            var half = 0.5 * known[i].DegreesOfFreedom;
            logs[i] = Math.Log(Math.Max(floor, known[i].Variance)) - Polygamma.Digamma(half) + Math.Log(half);
            expected += Polygamma.Trigamma(half) / logs.Length;
            mean += Math.Max(floor, known[i].Variance) / logs.Length;
        }

        var excess = Moments.Variance(logs) - expected;
        if (!(excess > 0))
        {
            return (mean, double.PositiveInfinity);
        }

        var priorDegrees = 2 * Polygamma.InverseTrigamma(excess);
        var centre = Moments.Mean(logs) + Polygamma.Digamma(0.5 * priorDegrees) - Math.Log(0.5 * priorDegrees);
        return (Math.Exp(centre), priorDegrees);
    }

    private static double SmallestVariance(List<(double Variance, double DegreesOfFreedom)> known)
    {
        double[] sorted = [.. known.Select(one => one.Variance).Order()];
        var median = SampleQuantile.Of(sorted, 0.5)!.Value;
        if (median == 0)
        {
            median = SampleQuantile.Of(sorted.AsSpan().TrimStart(0.0), 0.5) ?? 0;
        }

        return 1e-5 * median;
    }
}
