using System.Globalization;
using Tarry.Reports.Wording;

namespace Tarry.Web.Shelf;

/// <summary>What the shelf says of a study, in words.</summary>
internal static class ShelfWording
{
    private const int LongestName = 120;
    private const int ShownLevels = 4;

    /// <summary>How many studies are shown.</summary>
    public static string Tally(int found, int all) => found == all
        ? Numbers.Count(all, "study", "studies")
        : $"{Numbers.Whole(found)} of {Numbers.Count(all, "study", "studies")}";

    /// <summary>The first and the last day.</summary>
    public static string Dates(StudyDates? dates) => dates switch
    {
        null => "no data yet",
        _ when dates.First == dates.Last => Day(dates.First, "d MMM yyyy"),
        _ when dates.First.Year == dates.Last.Year && dates.First.Month == dates.Last.Month => $"{Day(dates.First, "%d")} to {Day(dates.Last, "d MMM yyyy")}",
        _ when dates.First.Year == dates.Last.Year => $"{Day(dates.First, "d MMM")} to {Day(dates.Last, "d MMM yyyy")}",
        _ => $"{Day(dates.First, "d MMM yyyy")} to {Day(dates.Last, "d MMM yyyy")}",
    };

    /// <summary>Where the days are from.</summary>
    public static string? Source(StudyDates? dates) => dates?.Source switch
    {
        null => null,
        StudyDateSource.SittingNames => "as sittings are named",
        StudyDateSource.FileTimes => "by the files\u2019 times",
        _ => "by names and files\u2019 times",
    };

    /// <summary>The levels of a factor.</summary>
    public static string Levels(StudySummary study, string factor)
    {
        var levels = study.Levels[factor].Select(Short).ToList();
        return levels.Count <= ShownLevels
            ? string.Join(", ", levels)
            : $"{string.Join(", ", levels.Take(ShownLevels - 1))} and {Numbers.Whole(levels.Count - ShownLevels + 1)} more";
    }

    /// <summary>How many trials, and what else there is.</summary>
    public static string Trials(StudySummary study) =>
        Numbers.Whole(study.Trials)
        + (study.Reports > 0 ? $" and {Numbers.Count(study.Reports, "report")}" : "")
        + (study.OpenSessions > 0 ? $", {Numbers.Count(study.OpenSessions, "session")} open" : "");

    /// <summary>A name, cut where nobody would read on.</summary>
    public static string Short(string name)
    {
        var text = new StringInfo(PlainText.Clean(name));
        return text.LengthInTextElements <= LongestName ? text.String : text.SubstringByTextElements(0, LongestName) + "\u2026";
    }

    private static string Day(DateOnly day, string format) => day.ToString(format, CultureInfo.InvariantCulture).Replace(' ', '\u00a0');
}
