using Tarry.Statistics.Comparisons;
using Tarry.Statistics.Densities;
using Tarry.Statistics.Descriptives;
using Tarry.Statistics.Drift;
using Tarry.Statistics.Quantiles;

namespace Tarry.Benchmarks;

/// <summary>The statistics of a study as this project computes them, one step a method; each returns a number that depends on all of it.</summary>
internal sealed class OurAnalysis(Study study)
{
    private static readonly double[] Levels = [0.05, 0.5, 0.95, 0.99];

    private readonly double[][] conditions = [.. Enumerable.Range(0, Study.Conditions).Select(study.All)];

    public IReadOnlyList<(string Step, Func<double> Run)> Steps =>
    [
        ("summaries", Summaries),
        ("quantile intervals", QuantileIntervals),
        ("densities", Densities),
        ("comparisons", Comparisons),
        ("ranking", Ranking),
        ("drift and dependence", Drift),
    ];

    private double Summaries()
    {
        var sum = 0.0;
        foreach (var values in conditions)
        {
            sum += Moments.Mean(values) + Moments.StandardDeviation(values);
        }

        return sum;
    }

    private double QuantileIntervals()
    {
        var sum = 0.0;
        foreach (var values in conditions)
        {
            var sorted = (double[])values.Clone();
            Array.Sort(sorted);
            foreach (var level in Levels)
            {
                var limits = OrderStatisticInterval.Of(sorted, level);
                sum += SampleQuantile.Of(sorted, level)!.Value + limits.Low!.Value + limits.High!.Value;
            }
        }

        return sum;
    }

    private double Densities()
    {
        var sum = 0.0;
        foreach (var values in conditions)
        {
            var sorted = (double[])values.Clone();
            Array.Sort(sorted);
            var bandwidth = Bandwidth.SheatherJones(sorted)!.Value;
            sum += KernelDensity.OnGrid(sorted, sorted[0] - (3 * bandwidth), sorted[^1] + (3 * bandwidth), 512, bandwidth).Max();
        }

        return sum;
    }

    private double Comparisons()
    {
        var (means, moderated) = Moderate();
        var p = new List<double>();
        for (var i = 0; i < Study.Conditions; i++)
        {
            for (var j = i + 1; j < Study.Conditions; j++)
            {
                var standardError = Math.Sqrt((moderated.Posterior[i] + moderated.Posterior[j]) / Study.Sessions);
                p.Add(new MeanDifference(means[i] - means[j], standardError, moderated.TotalDegreesOfFreedom[i]).TwoSidedP);
            }
        }

        return HolmAdjustment.Adjust([.. p]).Sum();
    }

    private double Ranking()
    {
        var (means, moderated) = Moderate();
        double[] variances = [.. moderated.Posterior.ToArray().Select(variance => variance / Study.Sessions)];
        return RankSets.Of(means, variances, moderated.TotalDegreesOfFreedom[0]).Sum(set => set.Worst - set.Best + 1);
    }

    private double Drift() =>
        study.InOrder.Sum(values =>
            BatchVarianceTest.Of(values).Statistic + LjungBox.Test(values).Statistic + RankCusum.Test(values).Statistic);

    private (double[] Means, ModeratedVariance Moderated) Moderate()
    {
        var means = new double[Study.Conditions];
        var variances = new double[Study.Conditions];
        for (var condition = 0; condition < Study.Conditions; condition++)
        {
            double[] sessions = [.. Enumerable.Range(condition * Study.Sessions, Study.Sessions).Select(session => Moments.Mean(study.InOrder[session]))];
            means[condition] = Moments.Mean(sessions);
            variances[condition] = Moments.Variance(sessions);
        }

        return (means, ModeratedVariance.Squeeze(variances, Enumerable.Repeat(Study.Sessions - 1.0, Study.Conditions).ToArray()));
    }
}
