using Tarry.Studies;
using Tarry.Studies.Sessions;
using Tarry.Web.Shelf;

namespace Tarry.Web.Tests.Shelf;

public class StudyDatesTests
{
    private static readonly DateTimeOffset Written = new(2026, 3, 31, 22, 30, 0, TimeSpan.Zero);

    [Theory]
    [InlineData("2026-11-03", "2026-11-03")]
    [InlineData("2026-11-03-evening", "2026-11-03")]
    [InlineData("lab_2026_11_03", "2026-11-03")]
    [InlineData("20261103b", "2026-11-03")]
    [InlineData("monday", null)]
    [InlineData("sitting-3", null)]
    [InlineData("2026-13-03", null)]
    [InlineData("2026-02-30", null)]
    [InlineData("serial-120261103", null)]
    public void NamedIn_OfASittingsName_FindsTheDayOrNone(string sitting, string? day) =>
        Assert.Equal(day is null ? null : DateOnly.ParseExact(day, "yyyy-MM-dd", System.Globalization.CultureInfo.InvariantCulture), StudyDates.NamedIn(sitting));

    [Fact]
    public void Of_SittingsNamedByTheirDays_TakesThese() =>
        Assert.Equal(
            new StudyDates(new DateOnly(2024, 1, 5), new DateOnly(2026, 11, 3), StudyDateSource.SittingNames),
            StudyDates.Of([Session("2026-11-03"), Session("2024-01-05")], TimeZoneInfo.Utc));

    [Fact]
    public void Of_SittingsNamedOtherwise_TakesTheFilesTimesInTheZoneOfTheReader() =>
        Assert.Equal(
            new StudyDates(new DateOnly(2026, 4, 1), new DateOnly(2026, 4, 1), StudyDateSource.FileTimes),
            StudyDates.Of([Session("monday")], TimeZoneInfo.CreateCustomTimeZone("east", TimeSpan.FromHours(2), "east", "east")));

    [Fact]
    public void Of_SomeOfEach_SaysSo() => Assert.Equal(StudyDateSource.Both, StudyDates.Of([Session("monday"), Session("2026-11-03")], TimeZoneInfo.Utc)!.Source);

    [Fact]
    public void Of_NoSession_IsUnknown() => Assert.Null(StudyDates.Of([], TimeZoneInfo.Utc));

    private static SessionOutline Session(string sitting) => new(new SessionKey(sitting, "a"), true, 10, null, Written);
}
