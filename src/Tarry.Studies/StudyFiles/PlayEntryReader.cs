using Tomlyn.Syntax;

namespace Tarry.Studies.StudyFiles;

/// <summary>Reads the <c>[play]</c> table: one number or a list of numbers a key.</summary>
internal static class PlayEntryReader
{
    private const double LongestMs = 1000;
    private const double ShortestPlayerSdMs = 0.1;

    /// <summary>The table, or null where the file has none.</summary>
    /// <exception cref="StudyException">A value is not allowed.</exception>
    public static PlayEntry? Read(StudyFileText file) => file.Table("play") is not { } table
        ? null
        : new PlayEntry(
            Numbers(table, "window_ms", IsWindow, $"must be milliseconds, more than 0 and at most {LongestMs}, such as 16.7 or [8.3, 16.7]"),
            Numbers(table, "player_sd_ms", IsPlayerSd, $"must be milliseconds: 0 for a player who never errs, or {ShortestPlayerSdMs} to {LongestMs}, such as 10 or [0, 10]"));

    /// <summary>Whether a number may be a timing window, in ms.</summary>
    public static bool IsWindow(double number) => number is > 0 and <= LongestMs;

    /// <summary>Whether a number may be a player's standard deviation, in ms.</summary>
    public static bool IsPlayerSd(double number) => number is 0 or (>= ShortestPlayerSdMs and <= LongestMs);

    private static double[]? Numbers(TableText table, string key, Func<double, bool> isAllowed, string rule)
    {
        if (table.Find(key) is not { } entry)
        {
            return null;
        }

        ValueSyntax[] values = entry.Value is ArraySyntax list ? [.. list.Items.Select(item => item.Value!)] : [entry.Value!];
        var numbers = values.Select(value => value switch
        {
            FloatValueSyntax real => real.Value,
            IntegerValueSyntax whole => whole.Value,
            _ => double.NaN,
        }).ToArray();
        return numbers.Length > 0 && numbers.All(isAllowed)
            ? numbers
            : throw StudyFileText.Error(entry.Value!.Span, $"'{key}' {rule}.");
    }
}
