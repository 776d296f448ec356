using Tarry.Imports.DelimitedText;
using Tarry.Studies.Sticks;

namespace Tarry.Imports.Sticks;

/// <summary>Where the columns of a table of positions are; a stimulus that the file does not have is -1.</summary>
internal sealed record StickTableColumns(IReadOnlyList<string> Header, int Time, TimeUnit TimeUnit, int X, int Y, int Angle, int LevelX, int LevelY)
{
    /// <summary>What the file knows of the true position.</summary>
    public StickStimulus Stimulus => Angle >= 0 ? StickStimulus.Angle : LevelX >= 0 || LevelY >= 0 ? StickStimulus.Level : StickStimulus.None;

    /// <summary>The columns of a header.</summary>
    /// <exception cref="ImportException">One that is needed is missing, doubled or without its unit.</exception>
    public static StickTableColumns Of(string[] header, string place, StickTableOptions options)
    {
        var time = Find(header, place, options.TimeColumn, "--time-column", "time", "time_us", "time_ms", "time_s", "time_ns");
        var found = new StickTableColumns(
            header,
            Required(time, header, place, "the time", "time_us (or time_ms, time_s, time_ns)", "--time-column"),
            options.TimeUnit ?? TimeUnits.FromSuffix(header[time]) ?? throw new ImportException(
                $"The unit of the column '{header[time]}' is not known.", place, "Give --time-unit us, ms, s or ns, or end the column's name with _us, _ms, _s or _ns."),
            Required(Find(header, place, options.XColumn, "--x-column", "x"), header, place, "the x axis", "x", "--x-column"),
            Required(Find(header, place, options.YColumn, "--y-column", "y"), header, place, "the y axis", "y", "--y-column"),
            Find(header, place, options.AngleColumn, "--stimulus-column", "stimulus_deg"),
            Find(header, place, options.LevelXColumn, "--stimulus-x-column", "stimulus_x"),
            Find(header, place, options.LevelYColumn, "--stimulus-y-column", "stimulus_y"));
        return found.Angle < 0 || (found.LevelX < 0 && found.LevelY < 0)
            ? found
            : throw new ImportException("The file has an angle and a level as stimulus.", place, "Name the one that holds with its option and rename or remove the other column.");
    }

    private static int Find(string[] header, string place, string? named, string option, params string[] usual)
    {
        string[] names = named is null ? usual : [named];
        int[] found = [.. Enumerable.Range(0, header.Length).Where(index => names.Contains(header[index], StringComparer.OrdinalIgnoreCase))];
        return found switch
        {
            [] => named is null ? -1 : Required(-1, header, place, named, named, option),
            [var only] => only,
            [var first, var second, ..] => throw new ImportException(
                $"The columns '{header[first]}' and '{header[second]}' (numbers {first + 1} and {second + 1}) could both be meant.", place, $"Rename or remove one of them, or say which with {option} NAME."),
        };
    }

    private static int Required(int index, string[] header, string place, string what, string sought, string option) => index >= 0
        ? index
        : throw new ImportException(
            $"There is no column for {what}: looked for {sought}; the file has {string.Join(", ", header.Take(20).Select(name => Excerpt.Of(name)))}{(header.Length > 20 ? " and more" : "")}.",
            place,
            $"Give {option} NAME{(header.Length == 1 ? ", or --delimiter if the cells were not told apart" : "")}.");
}
