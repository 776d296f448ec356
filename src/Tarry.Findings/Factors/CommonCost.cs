using Tarry.Metrology;
using Tarry.Statistics.Comparisons;
using Tarry.Statistics.Descriptives;
using Tarry.Statistics.Distributions;

namespace Tarry.Findings.Factors;

/// <summary>The mean cost of a level over several settings, with the error that shared sittings give it.</summary>
/// <remarks>
/// <para>Cost: the unweighted mean of the K settings' mean differences. Its variance has two parts. Own: sum of the settings'
/// squared standard errors over K^2, from the moderated variances of the study. Shared: what a sitting does to the level on
/// every setting alike (another day of the same layer) is seen once a sitting; the variance of the sittings' mean costs, drawn
/// towards the own part as if that were worth two degrees of freedom, less the own part, not below 0. With K settings in the
/// same J sittings the sum is max(V/K, (2 V/K + (J - 1) U) / (J + 1)) / J on J + 1 degrees of freedom, V the mean moderated
/// variance and U the variance of the J mean costs.</para>
/// <para>Agreement: F = sum J_k (d_k - mean)^2 / ((K - 1) V) on K - 1 and the moderated degrees of freedom.</para>
/// <para>Simulation, 20,000 repetitions, 2 to 5 settings in 2 to 6 sittings, nominal 95 %: coverage .96-.99 where nothing is
/// shared, .95-.97 where the shared part has half the sd of a setting's own, .89-.94 where it has the same (own parts alone:
/// .95, .84-.94, .67-.88; the J mean costs alone: .95, at 1.1 to 5 times the width). docs/decisions/0009.</para>
/// </remarks>
internal sealed record CommonCost
{
    private const double WorthOfOwnPart = 2;
    private const double DifferBelow = 0.05;
    private const double LeastDegrees = 1;

    private CommonCost(MeanDifference pooled, CostAgreement agreement, MeanDifference ofSettings, double sittingVariance, int sittings, int trialsPerSession) =>
        (Pooled, Agreement, OfSettings, SittingVariance, Sittings, TrialsPerSession) = (pooled, agreement, ofSettings, sittingVariance, sittings, trialsPerSession);

    /// <summary>The common cost, for settings that agree.</summary>
    public MeanDifference Pooled { get; }

    /// <summary>Whether they do.</summary>
    public CostAgreement Agreement { get; }

    /// <summary>The mean over settings with the settings as the unit.</summary>
    public MeanDifference OfSettings { get; }

    /// <summary>Variance of one sitting's mean cost.</summary>
    public double SittingVariance { get; }

    /// <summary>How many sittings.</summary>
    public int Sittings { get; }

    /// <summary>Trials of a session on average.</summary>
    public int TrialsPerSession { get; }

    /// <summary>The common cost.</summary>
    /// <param name="settings">Two or more, each with at least one contrast that has a difference.</param>
    public static CommonCost Of(IReadOnlyList<IReadOnlyList<FactorPair>> settings)
    {
        var each = settings.Select(setting => new Setting(setting)).ToList();
        double[] costs = [.. each.Select(setting => setting.Cost)];
        var count = (double)each.Count;
        var mean = costs.Average();
        var own = each.Sum(setting => setting.ErrorVariance) / (count * count);
        var degrees = each.Min(setting => setting.DegreesOfFreedom);
        var (shared, sharedDegrees) = SharedPart(each);
        var pooled = new MeanDifference(mean, Math.Sqrt(own + shared), Math.Max(LeastDegrees, Math.Min(degrees, sharedDegrees)));

        // Settings that agree to the tick have no error to hold a cost against, and nothing to hold against it.
        var f = each.Where(setting => setting.Cost != mean).Sum(setting => Math.Pow(setting.Cost - mean, 2) / setting.ErrorVariance) / (count - 1);
        var p = double.IsPositiveInfinity(f) ? 0 : FisherDistribution.UpperTail(f, count - 1, degrees);
        var sittings = each.SelectMany(setting => setting.Sittings.Keys).Distinct(StringComparer.Ordinal).Count();
        return new CommonCost(
            pooled,
            new CostAgreement(
                each.Count,
                f,
                p,
                LatencyDifference.FromMilliseconds(costs.Min()),
                LatencyDifference.FromMilliseconds(costs.Max()),
                p < DifferBelow),
            PairedDifference.Of(costs),
            (own + shared) * sittings,
            sittings,
            (int)settings.SelectMany(setting => setting).Average(pair => pair.Evidence.TrialsPerSession));
    }

    private static (double Variance, double DegreesOfFreedom) SharedPart(List<Setting> settings)
    {
        var inAll = settings[0].Sittings.Keys.Where(sitting => settings.TrueForAll(setting => setting.Sittings.ContainsKey(sitting))).Order(StringComparer.Ordinal).ToList();
        if (inAll.Count < 2)
        {
            return (0, double.PositiveInfinity);
        }

        var count = (double)settings.Count;
        var means = inAll.Select(sitting => settings.Average(setting => setting.Sittings[sitting])).ToArray();
        var own = settings.Average(setting => setting.SittingVariance) / count;
        var degrees = means.Length - 1 + WorthOfOwnPart;
        var excess = Math.Max(0, (((WorthOfOwnPart * own) + ((means.Length - 1) * Moments.Variance(means))) / degrees) - own);

        // What a sitting adds to every setting in it weighs by how often that sitting enters the mean.
        var weight = settings.SelectMany(setting => setting.Sittings.Keys.Select(sitting => (Sitting: sitting, Part: 1 / (count * setting.Sittings.Count))))
            .OrderBy(part => part.Sitting, StringComparer.Ordinal)
            .GroupBy(part => part.Sitting)
            .Sum(sitting => Math.Pow(sitting.Sum(part => part.Part), 2));
        return (excess * weight, degrees);
    }

    // Contrasts of one setting may share a condition: their errors are averaged as if they were one and the same.
    private sealed class Setting
    {
        public Setting(IReadOnlyList<FactorPair> contrasts)
        {
            Cost = contrasts.Average(pair => pair.LevelIsA ? pair.Evidence.Difference!.Value.Difference : -pair.Evidence.Difference!.Value.Difference);
            ErrorVariance = contrasts.Average(pair => Math.Pow(pair.Evidence.Guarded!.Value.StandardError, 2));
            DegreesOfFreedom = contrasts.Min(pair => pair.Evidence.Difference!.Value.DegreesOfFreedom);
            SittingVariance = contrasts.Average(pair => pair.Evidence.SittingVariance);
            Sittings = contrasts.SelectMany(pair => pair.Differences)
                .OrderBy(sitting => sitting.Key, StringComparer.Ordinal)
                .GroupBy(sitting => sitting.Key)
                .ToDictionary(sitting => sitting.Key, sitting => sitting.Average(difference => difference.Value), StringComparer.Ordinal);
        }

        public double Cost { get; }

        public double ErrorVariance { get; }

        public double DegreesOfFreedom { get; }

        public double SittingVariance { get; }

        public IReadOnlyDictionary<string, double> Sittings { get; }
    }
}
