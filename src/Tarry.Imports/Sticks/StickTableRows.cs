using Tarry.Imports.DelimitedText;
using Tarry.Studies.Sessions;
using Tarry.Studies.Sticks;
using static System.FormattableString;

namespace Tarry.Imports.Sticks;

/// <summary>The rows of a table of positions, one by one: kept, or refused with the line and the reason.</summary>
internal sealed class StickTableRows(StickTableColumns columns, StickTableOptions options, string fileName)
{
    /// <summary>Some hours at 8,000 positions a second.</summary>
    private const int MostRows = 100_000_000;
    private const double MostDegrees = 360;
    private readonly List<long> times = [];
    private readonly List<double> x = [];
    private readonly List<double> y = [];
    private readonly List<double> stimulus = [];
    private readonly List<double> stimulusY = [];
    private bool wholeMicroseconds = true;

    /// <summary>What was refused.</summary>
    public RefusalLog Refusals { get; } = new();

    /// <summary>Rows below the header.</summary>
    public long Read { get; private set; }

    /// <summary>Rows that were kept.</summary>
    public int Kept => times.Count;

    /// <summary>Times that were finer than a nanosecond, and were rounded to it.</summary>
    public long Rounded { get; private set; }

    /// <summary>Ticks a second: microseconds where all times are whole ones, else nanoseconds.</summary>
    public long TickHz => wholeMicroseconds ? 1_000_000 : 1_000_000_000;

    /// <summary>Whether every position is a whole number of counts.</summary>
    public bool WholeCounts { get; private set; } = true;

    /// <summary>Takes the row that the reader stands on.</summary>
    public void Take(RowReader row)
    {
        Read++;
        if (Refusal(row) is { } refusal)
        {
            Refusals.Add(refusal.Problem, new RefusedItem($"{fileName} line {row.Line}", refusal.Reason));
        }
        else if (times.Count > MostRows)
        {
            throw new ImportException($"The table has more than {MostRows} rows.", fileName, "Cut it into parts.");
        }
    }

    /// <summary>The positions kept.</summary>
    public StickSamples Samples()
    {
        var scale = 1_000_000_000 / TickHz;
        return new StickSamples(
            [.. times.Select(time => time / scale)],
            [.. x],
            [.. y],
            columns.Stimulus == StickStimulus.None ? null : [.. stimulus],
            columns.Stimulus == StickStimulus.Level ? [.. stimulusY] : null);
    }

    private RowRefusal? Refusal(RowReader row)
    {
        if (row.Defect != RowDefect.None)
        {
            return new RowRefusal(RowProblem.CannotBeSplit, RowText.Describe(row));
        }

        if (row.Count != columns.Header.Count)
        {
            return new RowRefusal(RowProblem.WrongNumberOfCells, $"{row.Count} cells, where the header has {columns.Header.Count}");
        }

        var (atX, atY, angle, levelX, levelY) = (double.NaN, double.NaN, double.NaN, double.NaN, double.NaN);
        var reading = CellNumbers.ReadNanoseconds(row[columns.Time], columns.TimeUnit, options.Text.DecimalComma, out var time);
        RowRefusal? untimed = reading is CellNumbers.Reading.Read or CellNumbers.Reading.Rounded ? null : Unread(row, columns.Time, reading);
        var refusal = untimed ?? Number(row, columns.X, options.X.Minimum, options.X.Maximum, ref atX)
            ?? Number(row, columns.Y, options.Y.Minimum, options.Y.Maximum, ref atY)
            ?? Optional(row, columns.Angle, -MostDegrees, MostDegrees, ref angle)
            ?? Optional(row, columns.LevelX, 0, options.Supply, ref levelX)
            ?? Optional(row, columns.LevelY, 0, options.Supply, ref levelY);
        if (refusal is not null)
        {
            return refusal;
        }

        if (times.Count > 0 && time < times[^1])
        {
            return new RowRefusal(RowProblem.TimeGoesBack, $"the time {Excerpt.Of(row[columns.Time])} is before that of the row kept last");
        }

        Rounded += reading == CellNumbers.Reading.Rounded ? 1 : 0;
        Keep(time, atX, atY, columns.Angle >= 0 ? angle : levelX / options.Supply, levelY / options.Supply);
        return null;
    }

    private void Keep(long time, double atX, double atY, double atStimulus, double atStimulusY)
    {
        wholeMicroseconds &= time % 1_000 == 0;
        WholeCounts &= double.IsInteger(atX) && double.IsInteger(atY);
        times.Add(time);
        x.Add(atX);
        y.Add(options.Vertical == VerticalDirection.Up ? atY : options.Y.Minimum + options.Y.Maximum - atY);
        if (columns.Stimulus != StickStimulus.None)
        {
            stimulus.Add(atStimulus);
        }

        if (columns.Stimulus == StickStimulus.Level)
        {
            stimulusY.Add(atStimulusY);
        }
    }

    /// <summary>An empty cell is a stimulus that is not known at that moment.</summary>
    private RowRefusal? Optional(RowReader row, int column, double low, double high, ref double value) =>
        column < 0 || CellNumbers.ReadDecimal(row[column], options.Text.DecimalComma, out _) == CellNumbers.Reading.Empty
            ? null
            : Number(row, column, low, high, ref value);

    private RowRefusal? Number(RowReader row, int column, double low, double high, ref double value)
    {
        var reading = CellNumbers.ReadDecimal(row[column], options.Text.DecimalComma, out var read);
        value = (double)read;
        return reading != CellNumbers.Reading.Read ? Unread(row, column, reading)
            : value >= low && value <= high ? null
            : new RowRefusal(RowProblem.OutOfRange, Invariant($"{columns.Header[column]} is {value}, outside {low}..{high}"));
    }

    private RowRefusal Unread(RowReader row, int column, CellNumbers.Reading reading) => new(
        reading == CellNumbers.Reading.OutOfRange ? RowProblem.OutOfRange : RowProblem.NotANumber,
        reading == CellNumbers.Reading.Empty ? $"{columns.Header[column]} is empty" : $"{columns.Header[column]} is {Excerpt.Of(row[column])}");
}
