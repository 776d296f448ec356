using Tarry.Findings.Conditions;
using Tarry.Metrology;
using Tarry.Statistics.Comparisons;
using Tarry.Statistics.Intervals;

namespace Tarry.Findings.Comparisons;

/// <summary>Compares every pair of conditions, within the sittings that both were run in where there are at least two.</summary>
internal static class PairFindings
{
    private const double SmallBelow = 0.05;

    public static IReadOnlyList<PairEvidence> Evidence(
        PairVariances variances,
        IReadOnlyList<ConditionPair> pairs,
        SessionScatter means) =>
        [.. pairs.Select(pair => CensoredDifference.Widened(Evidence(pair, variances, means)))];

    public static IReadOnlyList<ComparisonFinding> Findings(IReadOnlyList<PairEvidence> evidence, double marginMs)
    {
        var tested = evidence.Where(pair => pair.Difference is not null).ToList();
        var adjusted = new Queue<double>(HolmAdjustment.Adjust(tested.Select(pair => pair.Guarded!.Value.TwoSidedP).ToArray()));
        return [.. evidence.Select(pair => pair.Difference is { } difference
            ? Tested(pair, difference, adjusted.Dequeue(), tested.Count, marginMs)
            : Untested(pair, marginMs))];
    }

    private static PairEvidence Evidence(ConditionPair pair, PairVariances variances, SessionScatter means)
    {
        if (variances.Of(pair) is { } paired)
        {
            var sittings = pair.Differences.Length;
            var difference = new MeanDifference(pair.Mean, Math.Sqrt(paired.Variance / sittings), paired.Moderation.DegreesOfFreedom);
            return new PairEvidence(pair, difference, paired.Variance, MethodName.ModeratedPaired, sittings, paired.Moderation);
        }

        if (pair.Differences.Length == 0 && means.Of(pair.A.Id) is { } a && means.Of(pair.B.Id) is { } b)
        {
            var (sessionsOfA, sessionsOfB) = (pair.A.Sittings.Count, pair.B.Sittings.Count);
            var difference = WelchDifference.OfVariances(
                pair.A.Mean - pair.B.Mean,
                a.Variance / sessionsOfA,
                a.DegreesOfFreedom,
                b.Variance / sessionsOfB,
                b.DegreesOfFreedom);
            return new PairEvidence(pair, difference, a.Variance + b.Variance, MethodName.ModeratedUnpaired, sessionsOfA + sessionsOfB);
        }

        return new PairEvidence(pair, null, 0, MethodName.DifferenceWithinSession, pair.Differences.Length);
    }

    /// <summary>The verdict on a difference.</summary>
    public static Verdict VerdictOf(MeanDifference difference, double adjustedP, double marginMs) => VerdictRule.Of(
        difference.Difference,
        told: adjustedP < VerdictRule.ToldBelow,
        small: EquivalenceTest.Of(difference, -marginMs, marginMs).P < SmallBelow);

    /// <summary>The same comparison, judged in a family of its own.</summary>
    /// <param name="comparison">The comparison, from either side.</param>
    /// <param name="pair">What is known of it; it has a difference.</param>
    /// <param name="adjustedP">Its probability within the family.</param>
    /// <param name="tests">How many tests share the 5 %.</param>
    public static ComparisonFinding Judged(ComparisonFinding comparison, PairEvidence pair, double adjustedP, int tests)
    {
        var difference = pair.Difference!.Value;
        var seen = comparison.A == pair.Pair.A.Id ? difference : difference with { Difference = -difference.Difference };
        var verdict = VerdictOf(seen, adjustedP, comparison.MarginMs);
        return comparison with
        {
            AdjustedP = adjustedP,
            Verdict = verdict,
            Needed = verdict == Verdict.Undecided && !pair.IsCensored ? NeededEffort.Of(pair, difference.DegreesOfFreedom, comparison.MarginMs, tests) : null,
        };
    }

    private static ComparisonFinding Tested(PairEvidence pair, MeanDifference difference, double adjustedP, int pairs, double marginMs)
    {
        var limits = difference.Limits(Estimates.Level);
        return Judged(new ComparisonFinding
        {
            A = pair.Pair.A.Id,
            B = pair.Pair.B.Id,
            Difference = Estimates.Difference(difference.Difference, limits.Low, limits.High, pair.MethodName, pair.Trials, pair.Sessions),
            AdjustedP = null,
            MarginMs = marginMs,
            Verdict = Verdict.Undecided,
            MinimumDetectable = LatencyDifference.FromMilliseconds(
                MinimumDetectableDifference.Of(difference.StandardError, difference.DegreesOfFreedom, Estimates.Level)),
            StandardErrorMs = difference.StandardError,
            DegreesOfFreedom = difference.DegreesOfFreedom,
            Scatter = pair.Scatter,
            Needed = null,
        }, pair, adjustedP, pairs);
    }

    // One common sitting: how well it is known within that sitting, which decides nothing about another.
    private static ComparisonFinding Untested(PairEvidence pair, double marginMs) => new()
    {
        A = pair.Pair.A.Id,
        B = pair.Pair.B.Id,
        Difference = WithinOneSitting(pair),
        AdjustedP = null,
        MarginMs = marginMs,
        Verdict = Verdict.Undecided,
        MinimumDetectable = null,
        Needed = null,
    };

    private static EstimateOutcome<LatencyDifference> WithinOneSitting(PairEvidence pair)
    {
        if (pair.Pair.Differences is not [var value])
        {
            return new NotEnough<LatencyDifference>(pair.Sessions, 2, "sittings with both");
        }

        if (pair.Pair.WithinVariance is not { } variance)
        {
            return new NotEnough<LatencyDifference>(pair.Pair.FewestTrials, BatchMeansInterval.SmallestCount, "responses");
        }

        var limits = StudentInterval.Of(value, Math.Sqrt(variance), BatchMeansInterval.Batches - 1, Estimates.Level);
        var bounds = CensoredDifference.HalfWidthMs(pair.Pair);
        return Estimates.Difference(value, limits.Low - bounds, limits.High + bounds, pair.MethodName, pair.Trials, pair.Sessions);
    }
}
