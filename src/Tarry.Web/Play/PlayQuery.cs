using System.Globalization;
using Tarry.Studies.StudyFiles;

namespace Tarry.Web.Play;

/// <summary>Windows and players as an address or a field states them: numbers with commas between, in milliseconds.</summary>
/// <param name="Entry">What is stated; what is left open is as the study file has it.</param>
/// <param name="WindowsProblem">What is wrong with the windows; null where nothing is.</param>
/// <param name="PlayersProblem">What is wrong with the players; null where nothing is.</param>
public sealed record PlayQuery(PlayEntry Entry, string? WindowsProblem, string? PlayersProblem)
{
    private const int MostNumbers = 6;

    /// <summary>Whether anything is stated that can be used.</summary>
    public bool IsStated => WindowsProblem is null && PlayersProblem is null && (Entry.WindowsMs is not null || Entry.PlayerSdsMs is not null);

    /// <summary>Reads both.</summary>
    /// <param name="windows">Timing windows to either side, such as <c>8.3,16.7</c>; null or empty for the study's own.</param>
    /// <param name="players">Standard deviations of the player's own timing; 0 for one who never errs.</param>
    public static PlayQuery Parse(string? windows, string? players)
    {
        var (windowsMs, windowsProblem) = Numbers(windows, number => number is > 0 and <= 1000, "more than 0 and at most 1000");
        var (playersMs, playersProblem) = Numbers(players, number => number is 0 or (>= 0.1 and <= 1000), "0, or 0.1 to 1000");
        return new(new PlayEntry(windowsMs, playersMs), windowsProblem, playersProblem);
    }

    /// <summary>Numbers as they are written in a field.</summary>
    public static string Text(IEnumerable<double> numbers) => string.Join(", ", numbers.Select(number => Math.Round(number, 1).ToString(CultureInfo.InvariantCulture)));

    private static (double[]? Numbers, string? Problem) Numbers(string? text, Func<double, bool> isAllowed, string range)
    {
        if (string.IsNullOrWhiteSpace(text))
        {
            return (null, null);
        }

        var numbers = new List<double>();
        foreach (var part in text.Split(',', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries))
        {
            if (!double.TryParse(part, NumberStyles.Float, CultureInfo.InvariantCulture, out var number) || !double.IsFinite(number))
            {
                return (null, $"'{part}' is not a number; write numbers with a decimal point and commas between them, such as 8.3, 16.7.");
            }

            if (!isAllowed(number))
            {
                return (null, $"{part} is not possible; each must be {range} milliseconds.");
            }

            numbers.Add(number);
        }

        return numbers.Count is > 0 and <= MostNumbers ? ([.. numbers], null) : (null, $"Give from one to {MostNumbers} numbers.");
    }
}
