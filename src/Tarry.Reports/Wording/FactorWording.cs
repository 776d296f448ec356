using Tarry.Findings.Factors;
using Tarry.Metrology;
using static Tarry.Reports.Wording.Numbers;

namespace Tarry.Reports.Wording;

/// <summary>What factors do, in words.</summary>
public static class FactorWording
{
    /// <summary>On what a cost was measured: <c>3 devices</c>, <c>Quill 2</c>.</summary>
    public static string Settings(LevelCost cost)
    {
        ArgumentNullException.ThrowIfNull(cost);
        var devices = cost.Contrasts.Select(contrast => contrast.Shared.GetValueOrDefault("device")).Distinct(StringComparer.Ordinal).ToList();
        var settings = cost.Agreement?.Settings ?? 1;
        return (settings, devices) switch
        {
            (1, [{ } device]) => device,
            (1, _) => "1" + NoBreakSpace + "setting",
            _ when devices.Count == settings && !devices.Contains(null) => Count(settings, "device"),
            _ => Count(settings, "setting"),
        };
    }

    /// <summary>The verdict in a few words, for a table.</summary>
    public static string Verdict(LevelCost cost)
    {
        ArgumentNullException.ThrowIfNull(cost);
        if (cost.Verdict is { } verdict)
        {
            return cost.Agreement is null ? VerdictSentence.InBrief(cost.Contrasts[0].Comparison with { Verdict = verdict }) : VerdictSentence.InBrief(verdict);
        }

        return cost.Agreement is { } agreement
            ? $"differs: {Fixed(agreement.Least.Milliseconds, 2, withPlus: true)} to {Fixed(agreement.Greatest.Milliseconds, 2, withPlus: true)}{NoBreakSpace}ms"
            : "undecided";
    }

    /// <summary>Over what a factor's probabilities are adjusted.</summary>
    public static string Family(FactorFinding factor)
    {
        ArgumentNullException.ThrowIfNull(factor);
        var share = factor.Families > 1 ? $", with an equal part of the 5{NoBreakSpace}% for each of the {Count(factor.Families, "factor")} that differ alone somewhere" : "";
        return $"p is adjusted after Holm within the family of this factor ({Count(factor.Tests, "test")}){share}; the comparisons of the study are adjusted over all of its pairs.";
    }

    /// <summary>What a level costs, as a sentence.</summary>
    public static string Sentence(LevelCost cost)
    {
        ArgumentNullException.ThrowIfNull(cost);
        var name = $"{cost.Level} against {cost.Baseline}";
        if (cost.Cost is not Estimate<LatencyDifference> estimate)
        {
            return $"{name}: {EstimateWording.ClaimOrLack(cost.Cost, Quantity.Difference)}.";
        }

        var claim = EstimateWording.Claim(estimate, Quantity.Difference);
        var margin = Milliseconds(cost.MarginMs);
        var where = Settings(cost);
        var refused = cost.Contrasts.Where(contrast => contrast.Comparison.IsRefused).ToList();
        return cost.Verdict switch
        {
            null => $"{name} does not cost the same everywhere: {Verdict(cost)} over {where} (p {Probability(cost.Agreement!.P)}). On average {claim}, the interval of another one like these; see each of them.",
            Findings.Comparisons.Verdict.Slower => $"{name} costs {claim}, on {where}.",
            Findings.Comparisons.Verdict.Faster => $"{name} saves time: {claim}, on {where}.",
            Findings.Comparisons.Verdict.BelowMargin => $"{name} costs a measurable time below the margin of {margin} ({VerdictSentence.SmallBy}): {claim}, on {where}.",
            Findings.Comparisons.Verdict.NoDifferenceThatMatters => $"{name} costs nothing that matters: whatever it costs lies inside the margin of {margin} ({VerdictSentence.SmallBy}): {claim}, on {where}.",
            _ when refused.Count > 0 => $"{name} is undecided: {claim}, on {where}. {VerdictSentence.Refusal(refused[0].Comparison)}",
            _ => $"{name} is undecided: {claim}, on {where}. {(cost.Needed is { } needed ? VerdictSentence.Take(needed, margin) : cost.AdjustedP is null ? "One sitting does not show how much it changes from sitting to sitting; measure both again in at least two more." : "")}".TrimEnd(),
        };
    }
}
