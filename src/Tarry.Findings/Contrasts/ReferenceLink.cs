using Tarry.Findings.Conditions;
using Tarry.Findings.Quality;
using Tarry.Metrology;
using Tarry.Statistics.Comparisons;
using Tarry.Statistics.Distributions;

namespace Tarry.Findings.Contrasts;

/// <summary>Whether the references of two studies are one and the same, so that conditions of both can be linked through them.</summary>
internal static class ReferenceLink
{
    private static readonly string[] Specimen = ["device", "unit"];

    /// <summary>The references, and what the reader must know of the link.</summary>
    /// <exception cref="ContrastException">A study names no reference or has no data of it, or the references contradict each other.</exception>
    public static (ConditionFinding A, ConditionFinding B, IReadOnlyList<Caution> Cautions) Of(FindingsDocument a, FindingsDocument b)
    {
        var (first, second) = (Reference(a), Reference(b));
        var differences = FactorDifference.Between(first, second);
        var contradictions = differences.Where(difference => difference.IsContradiction).ToList();
        if (contradictions.Count > 0)
        {
            throw new ContrastException(
                $"The references of the two studies are not the same: {string.Join(", ", contradictions)}. A difference between them would be taken for one between the conditions.",
                "If that is a slip in a study file, correct it with 'tarry condition'; else run both conditions and one reference in the same sittings.");
        }

        var unstated = Specimen.Where(factor => !first.Factors.ContainsKey(factor) || !second.Factors.ContainsKey(factor))
            .Union(differences.Select(difference => difference.Factor))
            .ToList();
        return (first, second, unstated.Count == 0
            ? []
            : [new Caution(CautionKind.ReferenceUnstated, string.Join(", ", unstated), new Dictionary<string, double>())]);
    }

    /// <summary>The mean of the first reference less that of the second, between the studies.</summary>
    public static (EstimateOutcome<LatencyDifference> Change, IEnumerable<Caution> Cautions) Change(ConditionFinding a, ConditionFinding b)
    {
        if (a is not { Mean: Estimate<Latency> meanA, MeanScatter: { } scatterA } || b is not { Mean: Estimate<Latency> meanB, MeanScatter: { } scatterB })
        {
            return (new NotEnough<LatencyDifference>(Math.Min(a.UsedSessions, b.UsedSessions), 2, "sessions of the reference in each study"), []);
        }

        var change = WelchDifference.OfVariances(
            meanA.Value.Milliseconds - meanB.Value.Milliseconds,
            Variance(meanA, scatterA.DegreesOfFreedom),
            scatterA.DegreesOfFreedom,
            Variance(meanB, scatterB.DegreesOfFreedom),
            scatterB.DegreesOfFreedom);
        var limits = change.Limits(Estimates.Level);
        return (
            Estimates.Difference(
                change.Difference, limits.Low, limits.High, MethodName.BetweenStudies, meanA.Trials + meanB.Trials, meanA.Sessions + meanB.Sessions),
            change.TwoSidedP < Comparisons.VerdictRule.ToldBelow
                ? [new Caution(CautionKind.ReferenceMoved, a.Id, new Dictionary<string, double> { ["change_ms"] = change.Difference })]
                : []);
    }

    // The square of half the interval's width in units of Student's t.
    private static double Variance(Estimate<Latency> mean, double degreesOfFreedom)
    {
        var halfWidth = (mean.Interval.High.Milliseconds - mean.Interval.Low.Milliseconds) / 2;
        var error = halfWidth / StudentDistribution.Quantile((1 + Estimates.Level) / 2, degreesOfFreedom);
        return error * error;
    }

    private static ConditionFinding Reference(FindingsDocument document) => document.Reference is { } id
        ? ContrastCondition.Find(document, id)
        : throw new ContrastException(
            $"'{document.Title}' names no reference, and only through a reference can two studies be compared.",
            "Name it in study.toml (reference = \"...\"), if it was run in the same sittings.");
}
