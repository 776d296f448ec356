using Tarry.Findings.Comparisons;
using Tarry.Metrology;
using Tarry.Reports.Wording;

namespace Tarry.Reports.Tests.Wording;

public sealed class VerdictSentenceTests
{
    private const string Claim = "+1.20 ms (95 % interval +0.90 to +1.50; 4 sessions, 12,000 trials)";

    [Theory]
    [InlineData(Verdict.Slower, $"quill-usb is slower than tern-usb: {Claim}.")]
    [InlineData(Verdict.Faster, $"quill-usb is faster than tern-usb: {Claim}.")]
    [InlineData(Verdict.BelowMargin, $"quill-usb and tern-usb are told apart, but by less than the margin of 0.5 ms (by its 90 % interval): {Claim}.")]
    [InlineData(Verdict.NoDifferenceThatMatters, $"quill-usb and tern-usb are not told apart, and any difference lies inside the margin of 0.5 ms (by its 90 % interval): {Claim}.")]
    [InlineData(Verdict.Undecided, $"quill-usb against tern-usb is undecided: {Claim}. The interval is of this pair alone; after the adjustment for the number of pairs the two are not told apart, and a difference of 0.5 ms or more is not ruled out. To tell a difference of 0.5 ms with 80 % power takes 9 sittings in all with 1,500 trials in each session.")]
    public void Of_EveryVerdict_SaysWhatAndOnWhatEvidence(Verdict verdict, string sentence) =>
        Assert.Equal(sentence, Of(Samples.Comparison(verdict)));

    [Fact]
    public void Of_UndecidedWithZeroInside_SpeaksOfNoAdjustment() => Assert.Contains(
        ". The two are not told apart, and a difference",
        Of(Samples.Comparison(Verdict.Undecided, 0.2)),
        StringComparison.Ordinal);

    [Fact]
    public void Of_OneSittingAndOneTrial_HasSingularsAndAdvice() => Assert.EndsWith(
        "takes 1 sitting in all with 1 trial in each session.",
        Of(Samples.Comparison(Verdict.Undecided) with { Needed = new(1, 1) }),
        StringComparison.Ordinal);

    [Fact]
    public void Of_NoAdjustedP_SaysThatOneSittingDoesNotShowIt()
    {
        var once = Samples.Comparison(Verdict.Undecided) with { AdjustedP = null, Difference = Samples.Difference(1.2, 0.3, 1, 3000), Needed = null };
        var sentence = Of(once);
        Assert.Contains("within this sitting only", sentence, StringComparison.Ordinal);
        Assert.EndsWith("measure both again in at least two more.", sentence, StringComparison.Ordinal);
    }

    [Fact]
    public void Of_NotEnough_SaysThatTheyCannotBeCompared() => Assert.Equal(
        "quill-usb and tern-usb cannot be compared: not enough data: 1 of 2 sessions.",
        Of(Samples.Comparison(Verdict.Undecided) with { Difference = new NotEnough<LatencyDifference>(1, 2, "sessions") }));

    [Fact]
    public void InBrief_EveryVerdict_HasWords() =>
        Assert.Equal(5, Enum.GetValues<Verdict>().Select(VerdictSentence.InBrief).Distinct().Count());

    [Theory]
    [InlineData(Verdict.Slower, Verdict.Faster)]
    [InlineData(Verdict.Faster, Verdict.Slower)]
    [InlineData(Verdict.Undecided, Verdict.Undecided)]
    [InlineData(Verdict.BelowMargin, Verdict.BelowMargin)]
    [InlineData(Verdict.NoDifferenceThatMatters, Verdict.NoDifferenceThatMatters)]
    public void Find_FromTheOtherSide_TurnsSignIntervalAndVerdict(Verdict stored, Verdict seen)
    {
        var document = Samples.TwelveConditions() with { Comparisons = [Samples.Comparison(stored) with { Difference = Skewed(1.2, 1, 1.9) }] };
        var view = ComparisonView.Find(document, "tern-usb", "quill-usb")!;
        Assert.Equal(seen, view.Verdict);
        Assert.Equal(("tern-usb", "quill-usb"), (view.A, view.B));
        Assert.Equal(Skewed(-1.2, -1.9, -1), view.Difference);
    }

    private static Estimate<LatencyDifference> Skewed(double value, double low, double high) =>
        new(LatencyDifference.FromMilliseconds(value), new(LatencyDifference.FromMilliseconds(low), LatencyDifference.FromMilliseconds(high)), 0.95, "paired", 6000, 4);

    private static string Of(ComparisonFinding comparison) => VerdictSentence.Of(comparison).Replace('\u00A0', ' ');
}
