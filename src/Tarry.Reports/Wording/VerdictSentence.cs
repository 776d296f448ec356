using Tarry.Findings.Comparisons;
using Tarry.Findings.Quality;
using Tarry.Metrology;
using static Tarry.Reports.Wording.EstimateWording;
using static Tarry.Reports.Wording.Numbers;

namespace Tarry.Reports.Wording;

/// <summary>What can be said of one pair of conditions, in words.</summary>
public static class VerdictSentence
{
    /// <summary>By what a difference counts as small.</summary>
    internal const string SmallBy = "by its 90\u00A0% interval";

    /// <summary>The verdict in a few words, for a table.</summary>
    public static string InBrief(Verdict verdict) => verdict switch
    {
        Verdict.Slower => "slower",
        Verdict.Faster => "faster",
        Verdict.BelowMargin => "told, below the margin",
        Verdict.NoDifferenceThatMatters => "no difference that matters",
        Verdict.Undecided => "undecided",
        _ => throw new ArgumentOutOfRangeException(nameof(verdict), verdict, "A verdict without words."),
    };

    /// <summary>The verdict of a pair in a few words, with why it is refused where it is.</summary>
    public static string InBrief(ComparisonFinding comparison)
    {
        ArgumentNullException.ThrowIfNull(comparison);
        return comparison.IsRefused ? $"refused: {Kinds(comparison)}" : InBrief(comparison.Verdict);
    }

    /// <summary>Why a verdict is refused, as a sentence.</summary>
    internal static string Refusal(ComparisonFinding comparison) => comparison.Refusal.All(caution => caution.Kind == CautionKind.LossFavours)
        ? $"The verdict is refused: {Listing.And([.. comparison.Refusal.Select(caution => caution.Subject)])} loses presses, and as late as the latest that came they would overturn it."
        : $"The verdict is refused: fewer than two sittings are free of what undoes it ({Kinds(comparison)}). Measure both again in at least two more.";

    private static string Kinds(ComparisonFinding comparison) =>
        string.Join(", ", comparison.Refusal.Select(caution => CautionWording.Key(caution.Kind).Replace('-', ' ')).Distinct());

    /// <summary>The whole finding: both conditions, the difference with its interval, sessions and trials, and what it would take where it is open.</summary>
    public static string Of(ComparisonFinding comparison)
    {
        ArgumentNullException.ThrowIfNull(comparison);
        var (a, b) = (comparison.A, comparison.B);
        if (comparison.Difference is not Estimate<LatencyDifference> difference)
        {
            return $"{a} and {b} cannot be compared: {ClaimOrLack(comparison.Difference, Quantity.Difference)}.";
        }

        var claim = Claim(difference, Quantity.Difference);
        var margin = Milliseconds(comparison.MarginMs);
        return comparison.Verdict switch
        {
            Verdict.Slower => $"{a} is slower than {b}: {claim}.",
            Verdict.Faster => $"{a} is faster than {b}: {claim}.",
            Verdict.BelowMargin => $"{a} and {b} are told apart, but by less than the margin of {margin} ({SmallBy}): {claim}.",
            Verdict.NoDifferenceThatMatters => $"{a} and {b} are not told apart, and any difference lies inside the margin of {margin} ({SmallBy}): {claim}.",
            Verdict.Undecided => $"{a} against {b} is undecided: {claim}. {Open(comparison)}",
            _ => throw new ArgumentOutOfRangeException(nameof(comparison), comparison.Verdict, "A verdict without words."),
        };
    }

    /// <summary>Why a pair is open, and what it would take.</summary>
    internal static string Open(ComparisonFinding comparison)
    {
        var margin = Milliseconds(comparison.MarginMs);
        if (comparison.IsRefused)
        {
            return Refusal(comparison);
        }

        if (comparison.AdjustedP is null)
        {
            return "One sitting does not show how much the difference changes from sitting to sitting; measure both again in at least two more.";
        }

        // A reader sees an interval without zero in it and a verdict that tells nothing apart: say what lies between.
        var start = comparison.Difference is Estimate<LatencyDifference> difference && LeavesOutZero(difference)
            ? "The interval is of this pair alone; after the adjustment for the number of pairs the two"
            : "The two";
        var sentence = $"{start} are not told apart, and a difference of {margin} or more is not ruled out.";
        return comparison.Needed is { } needed ? $"{sentence} {Take(needed, margin)}" : sentence;
    }

    private static bool LeavesOutZero(Estimate<LatencyDifference> difference) =>
        difference.Interval.Low.Microseconds > 0 || difference.Interval.High.Microseconds < 0;

    /// <summary>What it takes, as a sentence.</summary>
    internal static string Take(Needed needed, string margin) =>
        $"To tell a difference of {margin} with 80{NoBreakSpace}% power takes {Design(needed)}.";

    /// <summary>What it takes, in a few words.</summary>
    public static string Design(Needed needed) =>
        $"{Count(needed.Sittings, "sitting")} in all with {Count(needed.TrialsPerSession, "trial")} in each session";
}
