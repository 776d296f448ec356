using Tarry.Studies.StudyFiles;

namespace Tarry.Studies.Tests.StudyFiles;

public sealed class PlayEntryReaderTests
{
    [Theory]
    [InlineData("[play]\nwindow_ms = [8.3, 16]\nplayer_sd_ms = 10", "8.3 16", "10")]
    [InlineData("[play]\nplayer_sd_ms = [0, 4.5] # mine", null, "0 4.5")]
    [InlineData("play = { window_ms = 5 }", "5", null)]
    [InlineData("[play]\nnote = \"kept\"", null, null)]
    public void Read_Table_GivesItsNumbers(string text, string? windows, string? players)
    {
        var play = Read(text).Play!;
        Assert.Equal(windows, Joined(play.WindowsMs));
        Assert.Equal(players, Joined(play.PlayerSdsMs));
    }

    [Fact]
    public void Read_NoTable_IsNull() => Assert.Null(Read("").Play);

    [Theory]
    [InlineData("[play]\nwindow_ms = 0")]
    [InlineData("[play]\nwindow_ms = []")]
    [InlineData("[play]\nwindow_ms = [8, \"16\"]")]
    [InlineData("[play]\nwindow_ms = 1001")]
    [InlineData("[play]\nplayer_sd_ms = 0.05")]
    [InlineData("[play]\nplayer_sd_ms = -1")]
    [InlineData("[[play]]\nplayer_sd_ms = 1")]
    [InlineData("play = 3")]
    public void Read_ValueNotAllowed_IsAnErrorWithItsPlace(string text)
    {
        var error = Assert.Throws<StudyException>(() => Read(text));
        Assert.Contains("study.toml line ", error.Place, StringComparison.Ordinal);
        Assert.NotEmpty(error.Remedy);
    }

    [Fact]
    public void Edit_AnotherValue_LeavesTheTableAndItsCommentsAlone()
    {
        const string text = "title = \"t\"\n\n[play] # for fast games\nwindow_ms = 5 # tight\n";
        Assert.Equal("title = \"t\"\nreference = \"a\"\n\n[play] # for fast games\nwindow_ms = 5 # tight\n", StudyFileEditor.SetReference(text, "a"));
    }

    private static StudyFile Read(string play) => StudyFileReader.Read(StudyFileText.Parse($"title = \"t\"\n{play}\n"));

    private static string? Joined(IReadOnlyList<double>? numbers) =>
        numbers is null ? null : string.Join(' ', numbers.Select(number => number.ToString(System.Globalization.CultureInfo.InvariantCulture)));
}
