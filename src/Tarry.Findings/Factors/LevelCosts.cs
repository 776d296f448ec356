using Tarry.Findings.Comparisons;
using Tarry.Findings.Conditions;
using Tarry.Metrology;
using Tarry.Statistics.Comparisons;

namespace Tarry.Findings.Factors;

/// <summary>States what a level costs: of one setting its contrast, of several their common cost, of several that differ their mean.</summary>
internal static class LevelCosts
{
    public static LevelCost Of(FactorPair first, IReadOnlyList<FactorContrast> contrasts, CommonCost? common, double? adjustedP, int tests)
    {
        var tested = contrasts.Where(contrast => contrast.Comparison is { StandardErrorMs: not null, IsRefused: false }).ToList();
        if (common is null)
        {
            return OfOne(first, contrasts, (tested.Count > 0 ? tested : contrasts)[0].Comparison);
        }

        var trials = tested.Sum(contrast => ((Estimate<LatencyDifference>)contrast.Comparison.Difference).Trials);
        return adjustedP is { } p ? OfAgreeing(first, contrasts, common, p, tests, trials) : OfDiffering(first, contrasts, common, trials);
    }

    private static LevelCost OfOne(FactorPair first, IReadOnlyList<FactorContrast> contrasts, ComparisonFinding only) => new()
    {
        Factor = first.Factor,
        Level = first.Level,
        Baseline = first.Baseline,
        Cost = only.Difference,
        AdjustedP = only.AdjustedP,
        MarginMs = only.MarginMs,
        Verdict = only.Verdict,
        MinimumDetectable = only.MinimumDetectable,
        Needed = only.Needed,
        StandardErrorMs = only.StandardErrorMs,
        DegreesOfFreedom = only.DegreesOfFreedom,
        Agreement = null,
        Contrasts = contrasts,
    };

    private static LevelCost OfAgreeing(FactorPair first, IReadOnlyList<FactorContrast> contrasts, CommonCost common, double adjustedP, int tests, int trials)
    {
        var margin = first.Comparison.MarginMs;
        var cost = common.Pooled;
        var verdict = PairFindings.VerdictOf(cost, adjustedP, margin);
        return Stated(first, contrasts, common, cost, MethodName.CommonCostOverSettings, trials, common.Sittings) with
        {
            AdjustedP = adjustedP,
            Verdict = verdict,
            MinimumDetectable = LatencyDifference.FromMilliseconds(MinimumDetectableDifference.Of(cost.StandardError, cost.DegreesOfFreedom, Estimates.Level)),
            Needed = verdict == Verdict.Undecided
                ? NeededEffort.Of(common.SittingVariance, cost.DegreesOfFreedom / Math.Max(1, common.Sittings - 1), common.Sittings + 1, common.TrialsPerSession, margin, tests)
                : null,
        };
    }

    private static LevelCost OfDiffering(FactorPair first, IReadOnlyList<FactorContrast> contrasts, CommonCost common, int trials) =>
        Stated(first, contrasts, common, common.OfSettings, MethodName.CostOverDifferingSettings, trials, common.Sittings);

    private static LevelCost Stated(FactorPair first, IReadOnlyList<FactorContrast> contrasts, CommonCost common, MeanDifference cost, string method, int trials, int sittings)
    {
        var limits = cost.Limits(Estimates.Level);
        return new LevelCost
        {
            Factor = first.Factor,
            Level = first.Level,
            Baseline = first.Baseline,
            Cost = Estimates.Difference(cost.Difference, limits.Low, limits.High, method, trials, sittings),
            AdjustedP = null,
            MarginMs = first.Comparison.MarginMs,
            Verdict = null,
            MinimumDetectable = null,
            Needed = null,
            StandardErrorMs = cost.StandardError,
            DegreesOfFreedom = cost.DegreesOfFreedom,
            Agreement = common.Agreement,
            Contrasts = contrasts,
        };
    }
}
