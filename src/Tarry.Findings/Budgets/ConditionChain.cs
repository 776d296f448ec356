using Tarry.Statistics.Uncertainty;

namespace Tarry.Findings.Budgets;

/// <summary>What stands between the truth and the latencies of a condition: its sessions' inputs, taken together.</summary>
internal static class ConditionChain
{
    /// <summary>
    /// A condition's latency is a mean over its sessions, and an input that was not measured anew is wrong alike in all of them: estimates
    /// and standard uncertainties are averaged (correlation +1). A session that an input does not touch counts as zero.
    /// </summary>
    public static IReadOnlyList<BudgetInput> Together(IReadOnlyList<SessionChain> sessions) =>
        [.. Enum.GetValues<UncertaintySource>().Select(source => Together(source, sessions)).OfType<BudgetInput>()];

    /// <summary>How far a latency moves with one unit of an input, in milliseconds.</summary>
    /// <param name="input">The input.</param>
    /// <param name="latencyMs">The latency, or the difference, that it acts on.</param>
    public static double Sensitivity(BudgetInput input, double latencyMs) => input.Unit == "ppm" ? -latencyMs / 1e6 : -1e-3;

    private static BudgetInput? Together(UncertaintySource source, IReadOnlyList<SessionChain> sessions)
    {
        var found = sessions.SelectMany(session => session.Inputs).Where(input => input.Source == source).ToList();
        if (found.Count == 0)
        {
            return null;
        }

        var alike = found.Count == sessions.Count && found.All(input => input.HalfWidth == found[0].HalfWidth && input.HalfWidth is not null);
        return found[0] with
        {
            Estimate = found.Sum(input => input.Estimate) / sessions.Count,
            StandardUncertainty = found.Sum(input => input.StandardUncertainty) / sessions.Count,
            HalfWidth = alike ? found[0].HalfWidth : null,
            Distribution = alike ? found[0].Distribution : UncertaintyDistribution.Normal,
            DegreesOfFreedom = found.Min(input => input.DegreesOfFreedom),
            Basis = string.Join("; ", found.Select(input => input.Basis).Distinct()),
        };
    }
}
