using Tarry.Studies.Sessions;
using Tarry.Studies.StudyFiles;

namespace Tarry.Studies.Tests.StudyFiles;

public sealed class StudyFileEditorTests
{
    /// <summary>Comments in every place that takes one, odd spacing, quotes of all kinds, letters beyond ASCII.</summary>
    private const string Commented = """"
        # Our bench — Süd 😀

        title   =  'Three pads' # the title
        # before the reference
        reference = "old" # why
        margin_ms = 0.5
        # end of the head

        # about the first
        [[condition]] # first
        # before id
        id = "a" # id
        "link"='usb'   # quoted key
        layer = """
        none""" # many lines
        # after the first

        [[condition]]
        id = "b"
        extra = { x = 1 } # inline
          [condition.lab] # sub-table
          room = "B"

        # the very end
        """";

    private static readonly string _commented = Commented + "\n";

    [Fact]
    public void SetReference_FileWithComments_ChangesThatValueAlone() =>
        Assert.Equal(
            _commented.Replace("reference = \"old\" # why", "reference = \"bench\" # why", StringComparison.Ordinal),
            StudyFileEditor.SetReference(_commented, "bench"));

    [Fact]
    public void SetReference_NoneYet_AddsALineBelowTheHead()
    {
        const string text = "title = \"t\" # c\n# d\n[[condition]]\nid = \"a\"\n";
        Assert.Equal("title = \"t\" # c\nreference = \"a\"\n# d\n[[condition]]\nid = \"a\"\n", StudyFileEditor.SetReference(text, "a"));
    }

    [Fact]
    public void SetCondition_NewOne_IsAppendedAndNothingElseChanges()
    {
        var edited = StudyFileEditor.SetCondition(_commented, new ConditionEntry
        {
            Id = "c",
            Factors = new Dictionary<string, string> { ["device"] = "Quill \"2\" \\ µ\n", ["cable colour"] = "red" },
            NominalReportHz = 133.25,
        });
        Assert.Equal(
            _commented + "\n[[condition]]\nid = \"c\"\ndevice = \"Quill \\\"2\\\" \\\\ µ\\n\"\n\"cable colour\" = \"red\"\nnominal_report_hz = 133.25\n",
            edited);
        var condition = Read(edited).Conditions[2];
        Assert.Equal("Quill \"2\" \\ µ\n", condition.Factors["device"]);
        Assert.Equal("red", condition.Factors["cable colour"]);
        Assert.Equal(133.25, condition.NominalReportHz);
    }

    [Fact]
    public void SetCondition_OneThatIsThere_SetsTheGivenKeysAndKeepsTheRest()
    {
        var edited = StudyFileEditor.SetCondition(_commented, ScratchStudy.Condition("a", ("link", "radio"), ("layer", "shim"), ("unit", "0041")));
        var expected = _commented
            .Replace("'usb'", "\"radio\"", StringComparison.Ordinal)
            .Replace("\"\"\"\nnone\"\"\" # many lines\n", "\"shim\" # many lines\nunit = \"0041\"\n", StringComparison.Ordinal);
        Assert.Equal(expected, edited);
    }

    [Fact]
    public void SetCondition_TableWithASubTable_AddsAboveTheSubTable()
    {
        var edited = StudyFileEditor.SetCondition(_commented, ScratchStudy.Condition("b", ("unit", "0042")));
        Assert.Equal(_commented.Replace("# inline\n", "# inline\nunit = \"0042\"\n", StringComparison.Ordinal), edited);
        Assert.Equal("0042", Read(edited).Conditions[1].Factors["unit"]);
    }

    [Fact]
    public void SetCondition_SameAgain_ChangesNothing()
    {
        var condition = ScratchStudy.Condition("c", ("link", "usb"));
        var once = StudyFileEditor.SetCondition(_commented, condition);
        Assert.Equal(once, StudyFileEditor.SetCondition(once, condition));
    }

    [Fact]
    public void AddExclusion_SameAgain_ChangesNothing()
    {
        var exclusion = new Exclusion(new SessionKey("monday", "a"), "cap was off", null, 20);
        var once = StudyFileEditor.AddExclusion(_commented, exclusion);
        Assert.Equal(_commented + "\n[[exclude]]\nsession = \"monday.a\"\nreason = \"cap was off\"\nlast_seq = 20\n", once);
        Assert.Equal(once, StudyFileEditor.AddExclusion(once, exclusion));
        Assert.Equal(2, Read(StudyFileEditor.AddExclusion(once, exclusion with { LastSequence = 21 })).Exclusions.Count);
    }

    [Theory]
    [InlineData("\n")]
    [InlineData("\r\n")]
    public void RemoveExclusion_ThatWasAdded_LeavesTheTextAsItWas(string lineEnd)
    {
        var before = _commented.Replace("\n", lineEnd, StringComparison.Ordinal);
        var exclusion = new Exclusion(new SessionKey("monday", "a"), "cap was \"off\" # not a comment", 3, 20);
        var other = exclusion with { FirstSequence = null };
        var once = StudyFileEditor.AddExclusion(before, exclusion);
        Assert.Equal(before, StudyFileEditor.RemoveExclusion(once, exclusion));
        Assert.Equal(StudyFileEditor.AddExclusion(before, other), StudyFileEditor.RemoveExclusion(StudyFileEditor.AddExclusion(once, other), exclusion));
        Assert.Equal(once, StudyFileEditor.RemoveExclusion(once, other));
    }

    [Fact]
    public void RemoveExclusion_BlockWithComments_KeepsEveryComment()
    {
        const string text = "title = \"t\" # c0\n# c1\n[[exclude]] # c2\n# c3\nsession = \"monday.a\"   # c4\n  # c5\n"
            + "reason = '''\nmany\nlines'''\n# c6\n\n[[condition]]\nid = \"a\"\n";
        var edited = StudyFileEditor.RemoveExclusion(text, Assert.Single(Read(text).Exclusions));
        Assert.Equal("title = \"t\" # c0\n# c1\n# c2\n# c3\n# c4\n  # c5\n# c6\n\n[[condition]]\nid = \"a\"\n", edited);
    }

    [Theory]
    [InlineData(0, "exclude = [{ session = \"m.a\", reason = \"y\" }, # two\n]\n")]
    [InlineData(1, "exclude = [{ session = \"m.a\", reason = \"x\" }# two\n]\n")]
    public void RemoveExclusion_OfAList_KeepsTheRestOfTheList(int index, string expected)
    {
        const string head = "title = \"t\"\n";
        const string condition = "[[condition]]\nid = \"a\"\n";
        const string text = head + "exclude = [{ session = \"m.a\", reason = \"x\" }, { session = \"m.a\", reason = \"y\" }# two\n]\n" + condition;
        var edited = StudyFileEditor.RemoveExclusion(text, Read(text).Exclusions[index]);
        Assert.Equal(head + expected.Replace("}, # two", "}# two", StringComparison.Ordinal) + condition, edited);
        Assert.Single(Read(edited).Exclusions);
        Assert.Empty(Read(StudyFileEditor.RemoveExclusion(edited, Read(edited).Exclusions[0])).Exclusions);
    }

    [Fact]
    public void Edits_FileWithCarriageReturns_KeepThemOnEveryLine()
    {
        var windows = _commented.Replace("\n", "\r\n", StringComparison.Ordinal);
        var edited = StudyFileEditor.SetCondition(windows, ScratchStudy.Condition("c", ("link", "usb")));
        edited = StudyFileEditor.SetCondition(edited, ScratchStudy.Condition("a", ("unit", "0041")));
        edited = StudyFileEditor.SetReference(edited, "bench");
        edited = StudyFileEditor.AddExclusion(edited, new Exclusion(new SessionKey("monday", "c"), "cap was off", 1, 20));
        Assert.Equal(edited.Count(c => c == '\n'), edited.Split("\r\n").Length - 1);
        Assert.Equal(new Exclusion(new SessionKey("monday", "c"), "cap was off", 1, 20), Assert.Single(Read(edited).Exclusions));
        Assert.Equal("bench", Read(edited).Reference);
    }

    [Theory]
    [InlineData("title = \"t\"\ncondition = [] # none\n", "title = \"t\"\ncondition = [{ id = \"c\", link = \"usb\" }] # none\n")]
    [InlineData("title = \"t\"\ncondition = [{ id = \"a\" }]\n", "title = \"t\"\ncondition = [{ id = \"a\" }, { id = \"c\", link = \"usb\" }]\n")]
    [InlineData("title = \"t\"\ncondition = [\n  { id = \"a\" }, # one\n]\n", "title = \"t\"\ncondition = [\n  { id = \"a\" }, { id = \"c\", link = \"usb\" }, # one\n]\n")]
    [InlineData("title = \"t\"\ncondition = [{ id = \"c\" }]\n", "title = \"t\"\ncondition = [{ id = \"c\", link = \"usb\" }]\n")]
    [InlineData("title = \"t\"\ncondition = [{ id = \"c\", link = 'x' }]", "title = \"t\"\ncondition = [{ id = \"c\", link = \"usb\" }]")]
    [InlineData("title = \"t\"", "title = \"t\"\n\n[[condition]]\nid = \"c\"\nlink = \"usb\"\n")]
    [InlineData("title = \"t\"\n[[condition]]\nid = \"c\"", "title = \"t\"\n[[condition]]\nid = \"c\"\nlink = \"usb\"\n")]
    [InlineData("title = \"t\"\n[[condition]]\nid = \"c\"\nlab.room = 'B'\n", "title = \"t\"\n[[condition]]\nid = \"c\"\nlab.room = 'B'\nlink = \"usb\"\n")]
    public void SetCondition_ListsOfEveryForm_StayOfTheirForm(string text, string expected)
    {
        var edited = StudyFileEditor.SetCondition(text, ScratchStudy.Condition("c", ("link", "usb")));
        Assert.Equal(expected, edited);
        Assert.Equal("usb", Read(edited).Conditions.Single(condition => condition.Id == "c").Factors["link"]);
    }

    [Theory]
    [InlineData(0.1)]
    [InlineData(7)]
    [InlineData(1e-7)]
    [InlineData(1e22)]
    public void New_AnyMargin_ReadsBackTheSame(double margin)
    {
        var file = Read(StudyFileEditor.New("A \"quoted\" title\t\u0001\u007f", null, margin));
        Assert.Equal(margin, file.MarginMs);
        Assert.Equal("A \"quoted\" title\t\u0001\u007f", file.Title);
    }

    private static StudyFile Read(string text) => StudyFileReader.Read(StudyFileText.Parse(text));
}
