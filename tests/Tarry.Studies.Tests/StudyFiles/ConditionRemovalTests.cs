using Tarry.Studies.Sessions;
using Tarry.Studies.StudyFiles;

namespace Tarry.Studies.Tests.StudyFiles;

public sealed class ConditionRemovalTests
{
    private const string Blocks = """
        title = "t" # title

        # about a
        [[condition]] # a
        id = "a"
        # before the link
        link = "usb" # link
        [condition.lab] # part of a
        room = "B"

        # about b
        [[condition]]
        id = "b"

        [[exclude]]
        session = "monday.b"
        reason = "cap" # why
        # the end
        """;

    private const string Inline = "title = \"t\"\ncondition = [ { id = \"a\", link = \"usb\", layer = \"none\" }, {id=\"b\"} ] # all\n";

    [Fact]
    public void RemoveCondition_OfSeveral_TakesItsLinesAndItsSubTablesAndLeavesEveryComment() =>
        Assert.Equal(
            "title = \"t\" # title\n\n# about a\n# a\n# before the link\n# link\n# part of a\n\n# about b\n[[condition]]\nid = \"b\"\n\n[[exclude]]\nsession = \"monday.b\"\nreason = \"cap\" # why\n# the end",
            StudyFileEditor.RemoveCondition(Blocks, "a"));

    [Theory]
    [InlineData("a", "title = \"t\"\ncondition = [ {id=\"b\"} ] # all\n")]
    [InlineData("b", "title = \"t\"\ncondition = [ { id = \"a\", link = \"usb\", layer = \"none\" }] # all\n")]
    public void RemoveCondition_OfAList_TakesItWithItsComma(string id, string left) => Assert.Equal(left, StudyFileEditor.RemoveCondition(Inline, id));

    [Fact]
    public void RemoveCondition_TheOnlyOneOfAList_LeavesAnEmptyList() =>
        Assert.Equal("title = \"t\"\ncondition = [{ }]\n".Replace("{ }", "", StringComparison.Ordinal), StudyFileEditor.RemoveCondition("title = \"t\"\ncondition = [{ id = \"a\" }]\n", "a"));

    [Fact]
    public void ClearCondition_OfItsKeys_TakesTheirLinesOrPartsAlone()
    {
        Assert.Equal(Blocks.Replace("link = \"usb\" # link\n", "# link\n", StringComparison.Ordinal), StudyFileEditor.ClearCondition(Blocks, "a", ["link", "layer"]));
        Assert.Equal(Inline.Replace(", link = \"usb\"", "", StringComparison.Ordinal), StudyFileEditor.ClearCondition(Inline, "a", ["link"]));
        Assert.Equal(Inline.Replace(", link = \"usb\", layer = \"none\"", "", StringComparison.Ordinal), StudyFileEditor.ClearCondition(Inline, "a", ["link", "layer"]));
    }

    [Fact]
    public void SetTitleAndMargin_ChangeTheirValuesAlone() =>
        Assert.Equal(
            Blocks.Replace("title = \"t\" # title", "title = \"A \\\"new\\\" one\" # title\nmargin_ms = 0.25", StringComparison.Ordinal),
            StudyFileEditor.SetMargin(StudyFileEditor.SetTitle(Blocks, "A \"new\" one"), 0.25));
}
