using Tarry.Findings.Comparisons;
using Tarry.Findings.Conditions;
using Tarry.Findings.Quality;
using Tarry.Metrology;
using Tarry.Statistics.Comparisons;
using Tarry.Statistics.Intervals;

namespace Tarry.Findings.Contrasts;

/// <summary>
/// A condition in one study against one in another, linked through the reference that both studies ran: what changed between
/// the conditions that did not change in the reference.
/// </summary>
/// <remarks>
/// (A - reference of A) - (B - reference of B), each within its own sittings; the two are independent, and their variances add with
/// Welch-Satterthwaite degrees of freedom (<c>docs/methods/comparison-between-studies.md</c>). Whatever the chain of a study
/// adds to condition and reference alike cancels. Assumes that the reference itself is unchanged, which the data cannot show.
/// </remarks>
public static class LinkedContrast
{
    private const double SmallBelow = 0.05;
    // How a caution about a whole study names it.
    private const string ThisStudy = "this study";
    private const string FirstStudy = "first study";
    private const string SecondStudy = "second study";

    /// <summary>What the studies say of condition <paramref name="a"/> of the first against <paramref name="b"/> of the second.</summary>
    /// <exception cref="ContrastException">A condition is missing or is itself the reference, or the references do not link the studies.</exception>
    public static ContrastFinding Of(FindingsDocument studyA, string a, FindingsDocument studyB, string b)
    {
        ArgumentNullException.ThrowIfNull(studyA);
        ArgumentNullException.ThrowIfNull(studyB);
        var (first, second) = (Tested(studyA, a), Tested(studyB, b));
        var link = ReferenceLink.Of(studyA, studyB);
        var (change, moved) = ReferenceLink.Change(link.A, link.B);
        return new ContrastFinding
        {
            A = ContrastCondition.Side(studyA, first),
            B = ContrastCondition.Side(studyB, second),
            Comparison = Comparison(studyA, first, studyB, second),
            FactorDifferences = FactorDifference.Between(first, second),
            ReferenceChange = change,
            Cautions =
            [
                .. link.Cautions,
                .. moved,
                .. SeveralFactors.Of(first, second),
                .. Margins(studyA, studyB),
                .. Of(studyA, FirstStudy, link.A, first),
                .. Of(studyB, SecondStudy, link.B, second),
            ],
        };
    }

    private static ConditionFinding Tested(FindingsDocument study, string id)
    {
        var condition = ContrastCondition.Find(study, id);
        return condition.IsReference
            ? throw new ContrastException(
                $"'{id}' is the reference of '{study.Title}', through which the studies are linked; a change of it cannot be told from a change of the bench.",
                "Give a condition other than the reference.")
            : condition;
    }

    private static ComparisonFinding Comparison(FindingsDocument studyA, ConditionFinding a, FindingsDocument studyB, ConditionFinding b)
    {
        var (pairA, pairB) = (AgainstReference(studyA, a), AgainstReference(studyB, b));
        var margin = Math.Min(studyA.MarginMs, studyB.MarginMs);
        var finding = new ComparisonFinding
        {
            A = Label(studyA, a, studyB, FirstStudy),
            B = Label(studyB, b, studyA, SecondStudy),
            Difference = new NotEnough<LatencyDifference>(Math.Min(Sittings(a), Sittings(b)), 2, "sittings with the reference in each study"),
            AdjustedP = null,
            MarginMs = margin,
            Verdict = Verdict.Undecided,
            MinimumDetectable = null,
            Needed = null,
        };
        if (a.Relative is not Estimate<LatencyDifference> relativeA || b.Relative is not Estimate<LatencyDifference> relativeB
            || pairA is not { StandardErrorMs: { } errorA, DegreesOfFreedom: { } degreesA } || pairB is not { StandardErrorMs: { } errorB, DegreesOfFreedom: { } degreesB })
        {
            return finding;
        }

        var difference = WelchDifference.OfVariances(
            relativeA.Value.Milliseconds - relativeB.Value.Milliseconds, errorA * errorA, degreesA, errorB * errorB, degreesB);
        var limits = difference.Limits(Estimates.Level);
        var (trials, sessions) = (relativeA.Trials + relativeB.Trials, relativeA.Sessions + relativeB.Sessions);
        var verdict = VerdictRule.Of(
            difference.Difference,
            told: difference.TwoSidedP < VerdictRule.ToldBelow,
            small: EquivalenceTest.Of(difference, -margin, margin).P < SmallBelow);
        return finding with
        {
            Difference = Estimates.Difference(
                difference.Difference, limits.Low, limits.High, MethodName.LinkedThroughReferences, trials, sessions),
            AdjustedP = difference.TwoSidedP,
            Verdict = verdict,
            MinimumDetectable = LatencyDifference.FromMilliseconds(
                MinimumDetectableDifference.Of(difference.StandardError, difference.DegreesOfFreedom, Estimates.Level)),
            StandardErrorMs = difference.StandardError,
            DegreesOfFreedom = difference.DegreesOfFreedom,
            Needed = verdict == Verdict.Undecided
                ? Needed(difference, (errorA * errorA * relativeA.Sessions) + (errorB * errorB * relativeB.Sessions), margin, trials, sessions)
                : null,
        };
    }

    // As many sittings in either study; in all, twice as many.
    private static Needed? Needed(MeanDifference difference, double variance, double marginMs, int trials, int sessions)
    {
        var degreesPerSitting = difference.DegreesOfFreedom / Math.Max(1, (sessions / 2.0) - 1);
        return NeededEffort.Sittings(variance, degreesPerSitting, marginMs, Estimates.Level, from: 2) is { } sittings
            ? new Needed(2 * sittings, trials / (2 * Math.Max(1, sessions)))
            : null;
    }

    private static ComparisonFinding? AgainstReference(FindingsDocument study, ConditionFinding condition) =>
        study.Comparisons.FirstOrDefault(pair =>
            (pair.A == condition.Id && pair.B == study.Reference) || (pair.B == condition.Id && pair.A == study.Reference));

    private static int Sittings(ConditionFinding condition) =>
        condition.Relative is Estimate<LatencyDifference> relative ? relative.Sessions : 0;

    private static string Label(FindingsDocument study, ConditionFinding condition, FindingsDocument other, string place) =>
        $"{condition.Id} ({(study.Title == other.Title ? place : study.Title)})";

    private static IEnumerable<Caution> Margins(FindingsDocument a, FindingsDocument b)
    {
        if (a.MarginMs != b.MarginMs)
        {
            yield return new Caution(CautionKind.MarginsDiffer, "The two studies", new Dictionary<string, double>
            {
                ["smaller_ms"] = Math.Min(a.MarginMs, b.MarginMs),
                ["larger_ms"] = Math.Max(a.MarginMs, b.MarginMs),
            });
        }
    }

    private static IEnumerable<Caution> Of(FindingsDocument study, string place, params ConditionFinding[] conditions) =>
        conditions.SelectMany(condition => condition.Cautions)
            .Concat(study.Cautions)
            .Select(caution => caution with
            {
                Subject = caution.Subject.Contains(ThisStudy, StringComparison.Ordinal)
                    ? caution.Subject.Replace(ThisStudy, $"the {place}", StringComparison.Ordinal)
                    : $"{caution.Subject} ({place})",
            });
}
