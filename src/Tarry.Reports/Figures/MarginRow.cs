using Tarry.Findings;
using Tarry.Findings.Comparisons;
using Tarry.Findings.Factors;
using Tarry.Metrology;
using Tarry.Reports.Wording;

namespace Tarry.Reports.Figures;

/// <summary>A row of differences over the margin: what a layer costs over all devices, below it on one of the devices; or a pair of conditions.</summary>
/// <param name="Name">The layer, or the device.</param>
/// <param name="IsPart">Whether it is one device of several.</param>
/// <param name="Cost">What it costs, or what is lacking.</param>
/// <param name="Verdict">The verdict in a few words.</param>
/// <param name="IsOpen">Whether nothing is decided.</param>
internal sealed record MarginRow(string Name, bool IsPart, EstimateOutcome<LatencyDifference> Cost, string Verdict, bool IsOpen)
{
    /// <summary>The cost with its interval, for the label.</summary>
    public string Numbers => Cost is Estimate<LatencyDifference> cost
        ? $"{EstimateWording.Value(cost, Quantity.Difference)} ({EstimateWording.Bounds(cost, Quantity.Difference)})"
        : "not enough data";

    /// <summary>The rows of a study, one a cost and below it, where there are several, one a contrast; empty without layers.</summary>
    public static IReadOnlyList<MarginRow> OfLayers(FindingsDocument document) =>
    [
        .. (document.Factors ?? [])
            .Where(factor => factor.Factor == "layer")
            .SelectMany(factor => factor.Costs)
            .SelectMany(cost => Parts(cost).Prepend(new MarginRow(
                $"{cost.Level} against {cost.Baseline}",
                IsPart: false,
                cost.Cost,
                cost.Contrasts.Count > 1 ? $"{FactorWording.Verdict(cost)}, {FactorWording.Settings(cost)}" : FactorWording.Verdict(cost),
                cost.Verdict is null or Findings.Comparisons.Verdict.Undecided))),
    ];

    private static IEnumerable<MarginRow> Parts(LevelCost cost) => cost.Contrasts.Count < 2 ? [] : cost.Contrasts.Select(contrast => new MarginRow(
        contrast.Comparison.A,
        IsPart: true,
        contrast.Comparison.Difference,
        VerdictSentence.InBrief(contrast.Comparison),
        contrast.Comparison.Verdict == Findings.Comparisons.Verdict.Undecided));
}
