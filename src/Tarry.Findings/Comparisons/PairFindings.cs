using Tarry.Findings.Conditions;
using Tarry.Metrology;
using Tarry.Statistics.Comparisons;
using Tarry.Statistics.Distributions;

namespace Tarry.Findings.Comparisons;

/// <summary>Compares every pair of conditions, within the sittings that both were run in where there are at least two.</summary>
internal static class PairFindings
{
    private const double SmallLevel = 0.90;

    public static IReadOnlyList<PairEvidence> Evidence(
        PairVariances variances,
        IReadOnlyList<PairedDifference> pairs,
        SessionScatter means) =>
        [.. pairs.Select(pair => Evidence(pair, variances, means))];

    public static IReadOnlyList<ComparisonFinding> Findings(IReadOnlyList<PairEvidence> evidence, double marginMs)
    {
        var tested = evidence.Where(pair => pair.StandardError is not null).ToList();
        var adjusted = HolmAdjustment.Adjust(tested.Select(P).ToArray());
        var byPair = tested.Zip(adjusted).ToDictionary(entry => entry.First, entry => entry.Second);
        return [.. evidence.Select(pair => Finding(pair, byPair.TryGetValue(pair, out var p) ? p : null, marginMs))];
    }

    private static PairEvidence Evidence(PairedDifference pair, PairVariances variances, SessionScatter means)
    {
        if (variances.Of(pair) is { } paired)
        {
            var sittings = pair.Differences.Length;
            var variance = paired.Variance(PairVariances.Variance(pair));
            return new PairEvidence(pair, pair.Mean, Math.Sqrt(variance / sittings), paired.DegreesOfFreedom, variance, paired, MethodName.ModeratedPaired, sittings);
        }

        if (pair.Differences.Length == 0 && means.Of(pair.A.Id) is { } a && means.Of(pair.B.Id) is { } b)
        {
            var partA = a.Variance / pair.A.Sittings.Count;
            var partB = b.Variance / pair.B.Sittings.Count;
            var total = partA + partB;
            var denominator = (partA * partA / a.DegreesOfFreedom) + (partB * partB / b.DegreesOfFreedom);
            return new PairEvidence(
                pair,
                pair.A.Mean - pair.B.Mean,
                Math.Sqrt(total),
                denominator > 0 ? total * total / denominator : Math.Min(a.DegreesOfFreedom, b.DegreesOfFreedom),
                a.Variance + b.Variance,
                null,
                MethodName.ModeratedUnpaired,
                pair.A.Sittings.Count + pair.B.Sittings.Count);
        }

        return new PairEvidence(pair, pair.Differences.Length > 0 ? pair.Mean : null, null, 0, null, null, MethodName.DifferenceWithinSession, pair.Differences.Length);
    }

    private static double P(PairEvidence pair) => pair.StandardError is > 0 and var error
        ? StudentDistribution.TwoSidedP(pair.DifferenceMs!.Value / error, pair.DegreesOfFreedom)
        : pair.DifferenceMs == 0 ? 1 : 0;

    private static ComparisonFinding Finding(PairEvidence pair, double? adjustedP, double marginMs)
    {
        if (pair.DifferenceMs is not { } difference || pair.StandardError is not { } error)
        {
            return Untested(pair, marginMs);
        }

        var half = StudentDistribution.Quantile(0.975, pair.DegreesOfFreedom) * error;
        var halfOfSmall = StudentDistribution.Quantile((1 + SmallLevel) / 2, pair.DegreesOfFreedom) * error;
        var verdict = VerdictRule.Of(
            difference,
            told: adjustedP < VerdictRule.ToldBelow,
            small: Math.Abs(difference) + halfOfSmall < marginMs);
        var trials = pair.Method == MethodName.ModeratedPaired ? pair.Pair.Trials : pair.Pair.A.Trials + pair.Pair.B.Trials;
        var sittings = pair.Sessions;
        return new ComparisonFinding
        {
            A = pair.Pair.A.Id,
            B = pair.Pair.B.Id,
            Difference = Estimates.Difference(difference, difference - half, difference + half, pair.Method, trials, sittings),
            AdjustedP = adjustedP,
            MarginMs = marginMs,
            Verdict = verdict,
            MinimumDetectable = LatencyDifference.FromMilliseconds(MinimumDetectableDifference.Of(error, pair.DegreesOfFreedom)),
            StandardErrorMs = error,
            DegreesOfFreedom = pair.DegreesOfFreedom,
            Scatter = pair.Scatter,
            Needed = verdict == Verdict.Undecided
                ? NeededEffort.Of(pair.Variance!.Value, pair.DegreesOfFreedom / Math.Max(1, sittings - 1), marginMs, trials / (2 * Math.Max(1, sittings)))
                : null,
        };
    }

    // One common sitting: how well it is known within that sitting, which decides nothing about another.
    private static ComparisonFinding Untested(PairEvidence pair, double marginMs)
    {
        EstimateOutcome<LatencyDifference> difference = new NotEnough<LatencyDifference>(pair.Sessions, 2, "sittings with both");
        if (pair.DifferenceMs is { } value)
        {
            var half = StudentDistribution.Quantile(0.975, 19) * Math.Sqrt(pair.Pair.WithinVariance);
            difference = Estimates.Difference(value, value - half, value + half, pair.Method, pair.Pair.Trials, pair.Sessions);
        }

        return new ComparisonFinding
        {
            A = pair.Pair.A.Id,
            B = pair.Pair.B.Id,
            Difference = difference,
            AdjustedP = null,
            MarginMs = marginMs,
            Verdict = Verdict.Undecided,
            MinimumDetectable = null,
            Needed = null,
        };
    }
}
