using Tarry.Findings.Conditions;
using Tarry.Metrology;
using Tarry.Statistics;
using Tarry.Statistics.Distributions;

namespace Tarry.Findings.Play;

/// <summary>The hit probability of one condition for one player and window.</summary>
internal static class HitEstimate
{
    // The last digit that is shown; below it the shape of a far tail decides, which no trials show.
    private const double SmallestHalf = 1e-6;

    /// <summary>How much session shares scatter, for every setting and condition: [setting][condition].</summary>
    public static IReadOnlyList<IReadOnlyList<HitDispersion>> Dispersions(IReadOnlyList<PlayCondition> conditions, int settings) =>
        [.. Enumerable.Range(0, settings).Select(setting => HitDispersion.Of(
            [.. conditions.Select(condition => (condition.Windows[setting].DispersionRatio, condition.Sessions.Count - 1.0, condition.InPool))],
            conditions.Sum(condition => condition.Sessions.Count - 1.0)))];

    public static Estimate<Proportion> Of(PlayCondition condition, HitEvidence evidence, HitDispersion dispersion)
    {
        var one = condition.Sessions.Count == 1;
        var t = one ? NormalDistribution.Quantile(0.975) : StudentDistribution.Quantile(0.975, dispersion.DegreesOfFreedom);
        var limits = Score(evidence.Share, StandardError(condition, evidence, dispersion), condition.Presses / dispersion.Factor, t);
        return Estimates.Share(
            evidence.Share,
            Math.Max(0, Math.Min(limits.Low, evidence.Share * (1 - evidence.Unseen)) - SmallestHalf),
            Math.Min(1, Math.Max(limits.High, evidence.Share + ((1 - evidence.Share) * evidence.Unseen)) + SmallestHalf),
            one ? MethodName.HitsWithinSession : MethodName.HitsOverSessions,
            condition.Presses,
            condition.Sessions.Count);
    }

    // The score interval of a share (E. B. Wilson, J. Amer. Statist. Assoc. 22, 1927), for as many trials as give this error.
    private static ConfidenceLimits Score(double share, double error, double presses, double t)
    {
        var trials = error > 0 && share is > 0 and < 1 ? share * (1 - share) / (error * error) : presses;
        var centre = (share + (t * t / (2 * trials))) / (1 + (t * t / trials));
        var half = t / (1 + (t * t / trials)) * Math.Sqrt((share * (1 - share) / trials) + (t * t / (4 * trials * trials)));
        return new ConfidenceLimits(Math.Min(share, centre - half), Math.Max(share, centre + half));
    }

    public static double StandardError(PlayCondition condition, HitEvidence evidence, HitDispersion dispersion) =>
        Math.Sqrt(evidence.VarianceWithin * (condition.Sessions.Count == 1 ? 1 : dispersion.Factor));

    internal static double Joined(double half, double unseen) => Math.Sqrt((half * half) + (unseen * unseen));
}
