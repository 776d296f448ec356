using Tarry.Studies.Sessions;
using Tarry.Studies.StudyFiles;

namespace Tarry.Studies.Tests.StudyFiles;

public sealed class StudyFileReaderTests
{
    private const string Whole = """
        title = "Three pads and a dongle"
        reference = "bench-board"
        margin_ms = 0.5

        [[condition]]
        id = "quill-usb"
        device = "Quill 2"          # invented
        unit = "serial 0041"
        device_firmware = "1.7"
        link = "usb"
        layer = "none"
        control = "button"
        placement = "0.1 m"
        nominal_report_hz = 500
        cable_colour = "red"
        bought = 2024-05-01
        notes = { by = "me" }

        [[exclude]]
        session = "monday.quill-usb"
        reason = "frame cap was off"

        [[exclude]]
        session = "tuesday.quill-usb"
        reason = "warm-up"
        first_seq = 1
        last_seq = 200

        [lab]
        room = "B"
        """;

    [Fact]
    public void Read_WholeFile_GivesEverythingInFileOrder()
    {
        var file = Read(Whole);
        Assert.Equal("Three pads and a dongle", file.Title);
        Assert.Equal("bench-board", file.Reference);
        Assert.Equal(0.5, file.MarginMs);
        var condition = Assert.Single(file.Conditions);
        Assert.Equal("quill-usb", condition.Id);
        Assert.Equal(500, condition.NominalReportHz);
        Assert.Equal(
            ["device", "unit", "device_firmware", "link", "layer", "control", "placement", "cable_colour"],
            condition.Factors.Keys);
        Assert.Equal("red", condition.Factors["cable_colour"]);
        Assert.Equal(
            [
                new Exclusion(new SessionKey("monday", "quill-usb"), "frame cap was off", null, null),
                new Exclusion(new SessionKey("tuesday", "quill-usb"), "warm-up", 1, 200),
            ],
            file.Exclusions);
    }

    [Fact]
    public void Read_InlineTables_AreTheSameConditions()
    {
        var file = Read("title = \"t\"\ncondition = [{ id = \"a\", link = \"usb\" }, { id = \"b\" }]\n");
        Assert.Equal(["a", "b"], file.Conditions.Select(condition => condition.Id));
        Assert.Equal("usb", file.Conditions[0].Factors["link"]);
    }

    [Fact]
    public void Read_NothingButATitle_HasTheDefaultMarginAndNoReference()
    {
        var file = Read("title = \"t\"");
        Assert.Equal(0.5, file.MarginMs);
        Assert.Null(file.Reference);
    }

    [Theory]
    [InlineData("title = \"t\"\nmargin_ms = 0", "line 2 column 13", "more than 0")]
    [InlineData("title = \"t\"\nmargin_ms = -1.5", "line 2 column 13", "more than 0")]
    [InlineData("title = \"t\"\nmargin_ms = nan", "line 2 column 13", "more than 0")]
    [InlineData("title = \"t\"\nmargin_ms = inf", "line 2 column 13", "more than 0")]
    [InlineData("title = \"t\"\nmargin_ms = \"small\"", "line 2 column 13", "more than 0")]
    [InlineData("title = \"\"", "line 1 column 9", "'title'")]
    [InlineData("title = 7", "line 1 column 9", "'title'")]
    [InlineData("title = \"t\"\nreference = \"Bench Board\"", "line 2 column 13", "not a name")]
    [InlineData("title = \"t\"\n[[condition]]\nlink = \"usb\"", "line 2 column 1", "no id")]
    [InlineData("title = \"t\"\n[[condition]]\nid = \"A b\"", "line 3 column 6", "not a name")]
    [InlineData("title = \"t\"\n[[condition]]\nid = \"a\"\n[[condition]]\nid = \"a\"", "line 5 column 6", "first is at line 2")]
    [InlineData("title = \"t\"\n[[condition]]\nid = \"a\"\nnominal_report_hz = 0", "line 4 column 21", "nominal_report_hz")]
    [InlineData("title = \"t\"\n[condition]\nid = \"a\"", "line 2 column 1", "[[condition]]")]
    [InlineData("title = \"t\"\ncondition = [1]", "line 2 column 14", "[[condition]]")]
    [InlineData("title = \"t\"\n[[exclude]]\nsession = \"monday.a\"\nreason = \"x\"", "line 3 column 11", "does not have")]
    [InlineData("title = \"t\"\n[[condition]]\nid = \"a\"\n[[exclude]]\nsession = \"monday.a\"\nreason = \" \"", "line 6 column 10", "'reason'")]
    [InlineData("title = \"t\"\n[[condition]]\nid = \"a\"\n[[exclude]]\nsession = \"monday.a\"", "line 4 column 1", "no reason")]
    [InlineData("title = \"t\"\n[[condition]]\nid = \"a\"\n[[exclude]]\nreason = \"x\"", "line 4 column 1", "no session")]
    [InlineData("title = \"t\"\n[[condition]]\nid = \"a\"\n[[exclude]]\nsession = \"a\"\nreason = \"x\"", "line 5 column 11", "not a session")]
    [InlineData("title = \"t\"\n[[condition]]\nid = \"a\"\n[[exclude]]\nsession = \"m.a\"\nreason = \"x\"\nfirst_seq = 0", "line 7 column 13", "first_seq")]
    [InlineData("title = \"t\"\n[[condition]]\nid = \"a\"\n[[exclude]]\nsession = \"m.a\"\nreason = \"x\"\nfirst_seq = 9\nlast_seq = 3", "line 8 column 12", "before")]
    [InlineData("title = \"t\"\ntitle = \"u\"", "line 2 column 1", "title")]
    [InlineData("title = \n", "line 1 column 9", "value")]
    [InlineData("format = \"one\"\ntitle = \"t\"", "line 1 column 10", "whole number")]
    public void Read_Mistake_NamesTheLineTheColumnAndTheFault(string text, string place, string fault)
    {
        var error = Assert.Throws<StudyException>(() => Read(text));
        Assert.Equal($"study.toml {place}", error.Place);
        Assert.Contains(fault, error.Message, StringComparison.Ordinal);
        Assert.NotEmpty(error.Remedy);
    }

    [Fact]
    public void Read_NoTitle_SaysWhatToAdd() =>
        Assert.Contains("title = ", Assert.Throws<StudyException>(() => Read("margin_ms = 1")).Remedy, StringComparison.Ordinal);

    [Fact]
    public void Read_NewerFormat_SaysThatItIsNewer()
    {
        var error = Assert.Throws<StudyException>(() => Read("format = 2\ntitle = \"t\""));
        Assert.Contains("version 2", error.Message, StringComparison.Ordinal);
        Assert.Contains("newer version", error.Remedy, StringComparison.Ordinal);
    }

    private static StudyFile Read(string text) => StudyFileReader.Read(StudyFileText.Parse(text));
}
