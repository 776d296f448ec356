using Tarry.Imports.DelimitedText;
using Tarry.Imports.Recordings;

namespace Tarry.Imports.Video;

/// <summary>The brightness of two regions, frame by frame.</summary>
internal sealed class BrightnessTable
{
    /// <summary>A day at 230 frames a second.</summary>
    private const int MostFrames = 20_000_000;
    private const int RowsBetweenReports = 65_536;
    private const decimal LargestNumber = 1e12m;
    private readonly List<double> times = [];
    private readonly List<float> press = [];
    private readonly List<float> response = [];
    private readonly List<int> numbers = [];

    public IReadOnlyList<float> Press => press;

    public IReadOnlyList<float> Response => response;

    /// <summary>The number of each frame, counting those that the time stamps say are missing.</summary>
    public IReadOnlyList<int> Numbers => numbers;

    /// <summary>Frames that are missing.</summary>
    public long Missing { get; private set; }

    /// <summary>Frames a second by the time stamps.</summary>
    public double StampedFps { get; private set; }

    /// <summary>Reads the rows of a table; those that cannot be are refused, and are missing frames.</summary>
    /// <exception cref="ImportException">A column is not there, or there are more frames than can be.</exception>
    public static BrightnessTable Read(OpenedFile file, string fileName, VideoOptions options, RecordingPlan plan, Action<long> progress)
    {
        const char comment = '#';
        using var rows = new RowReader(file.Content, options.Delimiter ?? file.InferDelimiter(comment), comment);
        if (!rows.Read())
        {
            throw new ImportException("The file has no header.", fileName, "Give a table with the columns pts_time, press and response.");
        }

        string[] header = [.. Enumerable.Range(0, rows.Count).Select(index => rows[index].Trim().TrimStart('\uFEFF').ToString())];
        var (time, first, second) = (
            Column(header, options.TimeColumn, "--time-column", fileName),
            Column(header, options.PressColumn, "--press-column", fileName),
            Column(header, options.ResponseColumn, "--response-column", fileName));
        var table = new BrightnessTable();
        for (var count = 1L; rows.Read(); count++)
        {
            if (rows.Defect != RowDefect.None || rows.Count != header.Length)
            {
                plan.RefuseUnassigned($"{fileName} line {rows.Line}", "a row that cannot be split", rows.Defect != RowDefect.None ? RowText.Describe(rows) : $"{rows.Count} cells, where the header has {header.Length}");
            }
            else if (!(Number(rows[time]) is { } at && Number(rows[first]) is { } one && Number(rows[second]) is { } other))
            {
                var hint = !options.DecimalComma && (rows[time].Contains(',') || rows[first].Contains(',') || rows[second].Contains(',')) ? " Give --decimal-comma if that is how the file writes numbers." : "";
                plan.RefuseUnassigned($"{fileName} line {rows.Line}", "not a number", $"The time stamp or a brightness is no number.{hint}");
            }
            else if (table.times.Count > 0 && at <= table.times[^1])
            {
                plan.RefuseUnassigned($"{fileName} line {rows.Line}", "the time does not go on", FormattableString.Invariant($"The time stamp {at} is not after the one before."));
            }
            else
            {
                table.Add(at, (float)one, (float)other, fileName);
            }

            if (count % RowsBetweenReports == 0)
            {
                progress(count);
            }
        }

        table.Count();
        return table;

        double? Number(ReadOnlySpan<char> text) =>
            CellNumbers.ReadDecimal(text, options.DecimalComma, out var number) == CellNumbers.Reading.Read && Math.Abs(number) < LargestNumber ? (double)number : null;
    }

    private static int Column(string[] header, string name, string option, string fileName)
    {
        var index = Array.FindIndex(header, column => column.Equals(name, StringComparison.OrdinalIgnoreCase));
        return index >= 0 ? index : throw new ImportException(
            $"There is no column '{name}'; the file has {string.Join(", ", header.Take(20).Select(column => Excerpt.Of(column)))}.",
            fileName,
            $"Give {option} with a name that the file has; the first line holds the names.");
    }

    private void Add(double time, float one, float other, string fileName)
    {
        if (times.Count == MostFrames)
        {
            throw new ImportException($"The table has more than {MostFrames} frames.", fileName, "Cut it into parts.");
        }

        times.Add(time);
        press.Add(one);
        response.Add(other);
    }

    // Stamps are rounded, to microseconds or to a container's clock: the median step is the frame.
    private void Count()
    {
        if (times.Count < 2)
        {
            numbers.AddRange(Enumerable.Range(0, times.Count));
            return;
        }

        double[] steps = [.. times.Zip(times.Skip(1), (one, next) => next - one).Order()];
        var step = steps[steps.Length / 2];
        StampedFps = 1 / step;
        numbers.Add(0);
        for (var index = 1; index < times.Count; index++)
        {
            var passed = Math.Max(1, Math.Round((times[index] - times[index - 1]) / step));
            Missing += (long)Math.Min(passed - 1, MostFrames);
            numbers.Add((int)Math.Min(numbers[^1] + passed, int.MaxValue));
        }
    }
}
