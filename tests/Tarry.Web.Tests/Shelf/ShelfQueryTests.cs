using Tarry.Web.Shelf;

namespace Tarry.Web.Tests.Shelf;

public class ShelfQueryTests
{
    private static readonly ShelfQuery Any = new(null, null, null, null, null, null);

    private static readonly StudySummary Study = new()
    {
        Name = "2026/pads",
        Title = "Three pads",
        ChangedAt = DateTimeOffset.UnixEpoch,
        Dates = new StudyDates(new DateOnly(2025, 12, 30), new DateOnly(2026, 1, 4), StudyDateSource.SittingNames),
        Conditions = ["quill-usb"],
        Levels = new[] { ("device", "Quill 2"), ("link", "usb"), ("layer", "none") }.ToLookup(level => level.Item1, level => level.Item2),
        Sittings = ["2025-12-30", "2026-01-04"],
    };

    private static readonly StudySummary Unreadable = new() { Name = "broken", Title = "broken", ChangedAt = DateTimeOffset.UnixEpoch };

    public static TheoryData<string, bool> Words => new() { { "three PADS", true }, { "quill usb", true }, { "2026/", true }, { "2025-12-30", true }, { "pads sedge", false }, { "  ", true } };

    [Theory]
    [MemberData(nameof(Words))]
    public void Finds_Words_LooksForAllOfThemAnywhere(string text, bool found) => Assert.Equal(found, (Any with { Text = text }).Finds(Study));

    [Theory]
    [InlineData("2026-01-04", null, true)]
    [InlineData("2026-01-05", null, false)]
    [InlineData(null, "2025-12-30", true)]
    [InlineData(null, "2025-12-29", false)]
    [InlineData("2026-01-01", "2026-01-02", true)]
    public void Finds_Days_TakesStudiesWhoseDataReachIntoThem(string? from, string? to, bool found) =>
        Assert.Equal(found, (Any with { From = Day(from), To = Day(to) }).Finds(Study));

    [Fact]
    public void Finds_Levels_AreEachTheirOwnFactor()
    {
        Assert.True((Any with { Device = "quill 2", Link = "usb", Layer = "none" }).Finds(Study));
        Assert.False((Any with { Device = "usb" }).Finds(Study));
        Assert.False((Any with { Link = "usb", Layer = "remapper" }).Finds(Study));
    }

    [Fact]
    public void Finds_AStudyThatCannotBeRead_ByItsNameAloneAndNotByDays()
    {
        Assert.True(Any.Finds(Unreadable));
        Assert.True((Any with { Text = "brok" }).Finds(Unreadable));
        Assert.False((Any with { From = new DateOnly(2000, 1, 1) }).Finds(Unreadable));
        Assert.False((Any with { Device = "Quill 2" }).Finds(Unreadable));
    }

    private static DateOnly? Day(string? text) => text is null ? null : DateOnly.ParseExact(text, "yyyy-MM-dd", System.Globalization.CultureInfo.InvariantCulture);
}
