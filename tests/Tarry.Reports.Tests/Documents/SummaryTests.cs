using Tarry.Findings;
using Tarry.Findings.Comparisons;
using Tarry.Findings.Quality;
using Tarry.Metrology;
using Tarry.Reports.Documents;
using Tarry.Studies.Sessions;

namespace Tarry.Reports.Tests.Documents;

/// <summary>The wording of the summary, held as it reads: grammar and completeness, not arithmetic.</summary>
public sealed class SummaryTests
{
    [Fact]
    public void Soonest_TiesOpenAndFaster_AreEachSaid()
    {
        var text = Soonest(Samples.TwelveConditions());
        Assert.Equal(
            "The reference, bench-board, has the lowest mean: 2.13 ms (95 % interval 2.01 to 2.25; 4 sessions, 6,000 trials). "
            + "Of the other conditions, quill-usb has the lowest mean: 3.42 ms (95 % interval 3.29 to 3.55; 4 sessions, 6,000 trials). "
            + "It is not told from tern-usb, and any difference lies inside the margin of 0.5 ms (by its 90 % interval). "
            + "Whether it differs from marl-pad-500, tern-usb-relay-layer and fathom-wheel is undecided. "
            + "It is faster than 6 further conditions. "
            + "marl-pad-radio has the highest mean: 11.62 ms (95 % interval 11.35 to 11.89; 4 sessions, 5,928 trials).",
            text);
    }

    [Fact]
    public void Soonest_OneCondition_ComparesNothing() => Assert.Equal(
        "quill-usb has a mean of 3.42 ms (95 % interval 3.29 to 3.55; 4 sessions, 6,000 trials). With one condition there is nothing to compare it with.",
        Soonest(Samples.Document("One", [Samples.Condition("quill-usb", 3.42, 1.1)])));

    [Fact]
    public void Soonest_TwoWithoutReference_NamesTheFaster() => Assert.EndsWith(
        "4 sessions, 6,000 trials). It is faster than the other condition.",
        Soonest(Samples.Document("Two", [Samples.Condition("a", 3, 1), Samples.Condition("b", 5, 1)])),
        StringComparison.Ordinal);

    [Fact]
    public void Soonest_AllOthersSlower_ExceptsTheReference() => Assert.Contains(
        "It is faster than all 2 others apart from the reference.",
        Soonest(Samples.Document("Four", [Samples.Condition("r", 2, 1, reference: true), Samples.Condition("a", 3, 1), Samples.Condition("b", 5, 1), Samples.Condition("c", 7, 1)])),
        StringComparison.Ordinal);

    [Fact]
    public void Soonest_ReferenceAndOneOther_ReadsAsTwo() => Assert.Contains(
        "The other condition, a, has a mean of 3.00 ms",
        Soonest(Samples.Document("Two", [Samples.Condition("r", 2, 1, reference: true), Samples.Condition("a", 3, 1)])),
        StringComparison.Ordinal);

    [Fact]
    public void Soonest_LossyLeader_SaysThatItsMeanFlatters()
    {
        var lossy = Samples.Condition("radio", 3, 1, missed: 30) with { Cautions = [Samples.Caution(CautionKind.LossFavours, "radio", ("missed_percent", 2))] };
        Assert.Contains(
            "a link that loses its late ones looks faster than it is",
            Soonest(Samples.Document("Lossy", [lossy, Samples.Condition("b", 5, 1)])),
            StringComparison.Ordinal);
    }

    [Fact]
    public void Soonest_NoMeans_SaysSo() => Assert.Equal(
        "No condition has enough data for a mean.",
        Soonest(Samples.Document("None", [Samples.Condition("a", 3, 1, 0)])));

    [Fact]
    public void Soonest_SomeMeansLacking_NamesThem() => Assert.EndsWith(
        "There is not enough data for a mean of b.",
        Soonest(Samples.Document("Lacking", [Samples.Condition("a", 3, 1), Samples.Condition("b", 4, 1, 0)])),
        StringComparison.Ordinal);

    [Fact]
    public void Steadiest_Overlaps_AreOpen() => Assert.StartsWith(
        "The smallest spread (p95 less p5), the reference apart, is that of quill-usb: 0.99 ms (95 % interval 0.79 to 1.19; 4 sessions, 6,000 trials). The intervals of tern-usb, tern-usb-relay-layer and pinion-keys overlap with it, so their order is open. The largest late share is that of marl-pad-radio: 3.0 % (",
        Steadiest(Samples.TwelveConditions()),
        StringComparison.Ordinal);

    [Theory]
    [InlineData(1.2, "The interval of b overlaps with it, so their order is open.")]
    [InlineData(5, "No other interval of a spread overlaps with it.")]
    public void Steadiest_TwoConditions_SaysWhetherTheirOrderIsKnown(double slot, string sentence) => Assert.EndsWith(
        sentence,
        Steadiest(Samples.Document("Two", [Samples.Condition("a", 3, 1), Samples.Condition("b", 4, slot)])),
        StringComparison.Ordinal);

    [Theory]
    [InlineData(1, 0, "The condition was measured in one session only; the interval holds within that sitting and does not cover")]
    [InlineData(2, 0, "Every condition was measured in one session only; each interval holds within that sitting and does not cover")]
    [InlineData(1, 1, "once-0 was measured in one session only; the interval holds within that sitting and does not cover")]
    [InlineData(2, 1, "once-0 and once-1 were measured in one session only; their intervals hold within that sitting and do not cover")]
    public void OneSitting_OneOrSome_AgreesInNumber(int once, int often, string start)
    {
        List<Tarry.Findings.Conditions.ConditionFinding> conditions = [.. Enumerable.Range(0, once).Select(index => Samples.Condition($"once-{index}", 3, 1, 1)), .. Enumerable.Range(0, often).Select(index => Samples.Condition($"often-{index}", 4, 1))];
        Assert.StartsWith(start, Spaced(OneSittingSentences.Of(Samples.Document("x", conditions))), StringComparison.Ordinal);
    }

    [Fact]
    public void OneSitting_WithScatterOfOthers_GivesTheWiderInterval() => Assert.Contains(
        "With the between-session scatter of the other conditions added, the mean of fathom-wheel is 9.41 ms (95 % interval 9.10 to 9.72; 1 session, 1,500 trials, scatter borrowed).",
        Spaced(OneSittingSentences.Of(Samples.TwelveConditions())),
        StringComparison.Ordinal);

    [Fact]
    public void OneSitting_SeveralSessions_SaysNothing() =>
        Assert.Empty(OneSittingSentences.Of(Samples.Document("x", [Samples.Condition("a", 3, 1)])));

    [Theory]
    [InlineData(6000, 0, 0, 0, 0, "Of 6,000 captured trials 6,000 are used; none is missed, early, refused or excluded.")]
    [InlineData(1, 1, 0, 0, 0, "Of 2 captured trials 1 is used; 1 is missed.")]
    [InlineData(1, 2, 3, 1, 5, "Of 12 captured trials 1 is used; 2 are missed, 3 are early, 1 is refused and 5 are excluded.")]
    [InlineData(1, 0, 0, 0, 0, "One trial was captured: it is used.")]
    [InlineData(0, 0, 1, 0, 0, "One trial was captured: it is early.")]
    public void Counts_AnyNumbers_AgreeInNumber(long used, long missed, long early, long refused, long excluded, string sentence) =>
        Assert.Equal(sentence, Spaced([SummarySection.CountsSentence(new SessionCounts(used, missed, early, refused, excluded))]));

    [Fact]
    public void Tally_EveryVerdict_IsCounted()
    {
        List<ComparisonFinding> pairs = [.. Enum.GetValues<Verdict>().Select(verdict => Samples.Comparison(verdict))];
        Assert.Equal(
            "Of 5 pairs of conditions, 2 are told apart and not shown to lie within the margin; 1 is told apart by less than the margin of 0.5 ms; 1 is not told apart, with any difference inside the margin of 0.5 ms; 1 is undecided.",
            Spaced([PairsSummary.Tally(pairs, 0.5)]));
    }

    [Fact]
    public void Tally_OnePair_IsItsVerdict() => Assert.StartsWith(
        "quill-usb is slower than tern-usb: ",
        PairsSummary.Tally([Samples.Comparison(Verdict.Slower)], 0.5),
        StringComparison.Ordinal);

    [Theory]
    [InlineData(0, 1500, "monday.a: 0 of 1,500 trials set aside: why.")]
    [InlineData(1500, 0, "monday.a: all 1,500 trials set aside: why.")]
    [InlineData(1, 0, "monday.a: 1 of 1 trial set aside: why.")]
    public void Exclusions_Numbers_AgreeInNumber(long excluded, long used, string line) => Assert.Equal(
        line,
        Spaced([ExclusionsSection.Line(new(new("monday", "a"), new(used, 0, 0, 0, excluded), new NotEnough<Latency>(0, 2, "trials"), null, true, ["why"]))]));

    [Fact]
    public void Undecided_MoreThanSix_AreCounted()
    {
        var document = Samples.TwelveConditions();
        var open = document with { Comparisons = [.. document.Comparisons.Select(pair => pair with { Verdict = Verdict.Undecided, AdjustedP = 0.4, Needed = new(9, 1500) })] };
        Assert.Contains("49 more undecided pairs stand in the table of differences.", Spaced(PairsSummary.Of(open).Select(element => element.Value)), StringComparison.Ordinal);
    }

    private static string Soonest(FindingsDocument document) => Spaced(SoonestSentences.Of(document));

    private static string Steadiest(FindingsDocument document) => Spaced(SteadiestSentences.Of(document));

    private static string Spaced(IEnumerable<string> sentences) => string.Join(' ', sentences).Replace('\u00A0', ' ');
}
