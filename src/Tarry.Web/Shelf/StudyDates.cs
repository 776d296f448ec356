using System.Globalization;
using System.Text.RegularExpressions;
using Tarry.Studies;

namespace Tarry.Web.Shelf;

/// <summary>When the data of a study were captured, as far as it can be known: a session does not hold a date.</summary>
/// <param name="First">The first day.</param>
/// <param name="Last">The last day.</param>
/// <param name="Source">Where both are from.</param>
public sealed partial record StudyDates(DateOnly First, DateOnly Last, StudyDateSource Source)
{
    /// <summary>The dates of sessions; null where there are none.</summary>
    /// <param name="sessions">The sessions.</param>
    /// <param name="zone">The time zone in which a file's time is a day.</param>
    public static StudyDates? Of(IReadOnlyList<SessionOutline> sessions, TimeZoneInfo zone)
    {
        ArgumentNullException.ThrowIfNull(sessions);
        ArgumentNullException.ThrowIfNull(zone);
        if (sessions.Count == 0)
        {
            return null;
        }

        var dated = sessions.Select(session => (Named: NamedIn(session.Key.Sitting), session.WrittenAt)).ToList();
        var named = dated.Count(one => one.Named is not null);
        var days = dated.Select(one => one.Named ?? DateOnly.FromDateTime(TimeZoneInfo.ConvertTime(one.WrittenAt, zone).DateTime)).ToList();
        return new StudyDates(
            days.Min(),
            days.Max(),
            named == dated.Count ? StudyDateSource.SittingNames : named == 0 ? StudyDateSource.FileTimes : StudyDateSource.Both);
    }

    /// <summary>The day that the name of a sitting begins with or holds, such as <c>2026-11-03-evening</c>; null where it holds none.</summary>
    public static DateOnly? NamedIn(string sitting)
    {
        foreach (Match match in Day().Matches(sitting))
        {
            var text = match.Value.Replace("-", "", StringComparison.Ordinal).Replace("_", "", StringComparison.Ordinal);
            if (DateOnly.TryParseExact(text, "yyyyMMdd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var day))
            {
                return day;
            }
        }

        return null;
    }

    // Years in which benches were and will be: a number of eight digits is not always a day.
    [GeneratedRegex("(?<![0-9])(19|20)[0-9]{2}(?<mark>[-_]?)[0-9]{2}\\k<mark>[0-9]{2}(?![0-9])")]
    private static partial Regex Day();
}
