using Tarry.Studies.Trials;

namespace Tarry.Imports.DelimitedText;

/// <summary>Reads the measured values of a row and checks each against its range and against the others.</summary>
internal sealed class RowValues(ColumnMap columns, bool decimalComma)
{
    private const long HourInNanoseconds = 3_600_000_000_000;

    /// <summary>The largest whole number that every reader of CSV keeps exactly: 2^53 - 1.</summary>
    private const long LargestSequence = 9_007_199_254_740_991;

    /// <summary>How many times were finer than a nanosecond and have been rounded to it.</summary>
    public long Rounded { get; private set; }

    /// <summary>Reads a row. What could be read before a refusal stays in <paramref name="values"/>.</summary>
    public RowRefusal? Read(RowReader row, ref ImportedRow values)
    {
        byte flags = 0;
        var refusal = ReadSequence(row, ref values)
            ?? ReadTime(row, columns.PressTime, columns.PressTimeUnit, long.MaxValue, "a press time is counted from the start and is not negative, nor beyond 292 years", ref values.PressNanoseconds)
            ?? ReadTime(row, columns.Latency, columns.LatencyUnit, HourInNanoseconds, "a latency is not negative, nor above one hour", ref values.LatencyNanoseconds)
            ?? ReadTime(row, columns.LatencyHigh, columns.LatencyHighUnit, HourInNanoseconds, "a latency is not negative, nor above one hour", ref values.LatencyHighNanoseconds)
            ?? ReadByte(row, columns.Flags, ref flags)
            ?? ReadByte(row, columns.Edges, ref values.Edges)
            ?? ReadExcluded(row, ref values)
            ?? ReadOutcome(row, ref values);
        values.Flags = (TrialFlags)flags;
        return refusal;
    }

    private RowRefusal? ReadSequence(RowReader row, ref ImportedRow values)
    {
        if (columns.Sequence < 0)
        {
            return null;
        }

        var cell = row[columns.Sequence];
        var reading = CellNumbers.ReadWhole(cell, decimalComma, 0, LargestSequence, out var sequence);
        if (reading == CellNumbers.Reading.Read)
        {
            values.Sequence = sequence;
            return null;
        }

        return Refuse(reading, columns.Sequence, cell, "a sequence number is whole and not negative");
    }

    private RowRefusal? ReadTime(RowReader row, int column, TimeUnit unit, long highest, string range, ref long nanoseconds)
    {
        if (column < 0)
        {
            return null;
        }

        var cell = row[column];
        var reading = CellNumbers.ReadNanoseconds(cell, unit, decimalComma, out var read);
        if (reading == CellNumbers.Reading.Empty)
        {
            return null;
        }

        if (reading is CellNumbers.Reading.Read or CellNumbers.Reading.Rounded && read >= 0 && read <= highest && !cell.TrimStart().StartsWith('-'))
        {
            Rounded += reading == CellNumbers.Reading.Rounded ? 1 : 0;
            nanoseconds = read;
            return null;
        }

        return Refuse(reading == CellNumbers.Reading.NotANumber ? reading : CellNumbers.Reading.OutOfRange, column, cell, range);
    }

    private RowRefusal? ReadByte(RowReader row, int column, ref byte value)
    {
        if (column < 0)
        {
            return null;
        }

        var reading = CellNumbers.ReadWhole(row[column], decimalComma, 0, byte.MaxValue, out var whole);
        value = (byte)whole;
        return reading is CellNumbers.Reading.Read or CellNumbers.Reading.Empty
            ? null
            : Refuse(reading, column, row[column], "it is a whole number from 0 to 255");
    }

    private RowRefusal? ReadExcluded(RowReader row, ref ImportedRow values)
    {
        if (columns.Excluded < 0)
        {
            return null;
        }

        var cell = row[columns.Excluded].Trim();
        values.Excluded = cell is "1" || cell.Equals("true", StringComparison.OrdinalIgnoreCase);
        return values.Excluded || cell is "" or "0" || cell.Equals("false", StringComparison.OrdinalIgnoreCase)
            ? null
            : new RowRefusal(RowProblem.NotANumber, $"{columns.Header[columns.Excluded]} {Excerpt.Of(cell)} is not 0 or 1");
    }

    private RowRefusal? ReadOutcome(RowReader row, ref ImportedRow values)
    {
        var hasLatency = values.LatencyNanoseconds != ImportedRow.Unknown;
        var cell = columns.Outcome < 0 ? [] : row[columns.Outcome].Trim();
        if (cell.IsEmpty)
        {
            values.Outcome = hasLatency ? Outcome.Response : Outcome.Missed;
        }
        else if (OutcomeNames.Parse(cell) is { } outcome)
        {
            values.Outcome = outcome;
        }
        else
        {
            return new RowRefusal(RowProblem.UnknownOutcome, $"outcome {Excerpt.Of(cell)} is not response, missed, early or refused");
        }

        if (values.Outcome == Outcome.Refused)
        {
            return new RowRefusal(RowProblem.MarkedRefused, "marked as refused in the file");
        }

        if (values.Outcome == Outcome.Response && !hasLatency)
        {
            return new RowRefusal(RowProblem.OutcomeAndLatencyDisagree, "a response without a latency");
        }

        if (values.Outcome == Outcome.Missed && hasLatency)
        {
            return new RowRefusal(RowProblem.OutcomeAndLatencyDisagree, "a missed trial with a latency");
        }

        return values.LatencyHighNanoseconds != ImportedRow.Unknown && (!hasLatency || values.LatencyHighNanoseconds < values.LatencyNanoseconds)
            ? new RowRefusal(RowProblem.OutOfRange, "the upper bound of the latency is below the latency, or stands alone")
            : null;
    }

    private RowRefusal Refuse(CellNumbers.Reading reading, int column, ReadOnlySpan<char> cell, string range)
    {
        var name = columns.Header[column];
        return reading switch
        {
            CellNumbers.Reading.OutOfRange => new RowRefusal(RowProblem.OutOfRange, $"{name} {Excerpt.Of(cell)} is out of range: {range}"),
            CellNumbers.Reading.Empty => new RowRefusal(RowProblem.NotANumber, $"{name} is empty"),
            _ => new RowRefusal(RowProblem.NotANumber, $"{name} {Excerpt.Of(cell)} is not a number{CommaRemedy(cell)}"),
        };
    }

    private string CommaRemedy(ReadOnlySpan<char> cell) =>
        !decimalComma && cell.Contains(',') ? "; give --decimal-comma if that is how the file writes numbers" : "";
}
