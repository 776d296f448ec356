using ParquetSharp;
using Tarry.Studies.Trials;

namespace Tarry.Studies.Sealing;

/// <summary>Trials as a Parquet file: the columns of <c>docs/study-format.md</c>.</summary>
internal static class TrialTable
{
    private static readonly Column[] _columns =
    [
        new Column<long>("seq"),
        new Column<int>("segment"),
        new Column<long?>("press_ticks"),
        new Column<long?>("latency_ticks"),
        new Column<long?>("latency_high_ticks"),
        new Column<byte>("outcome"),
        new Column<byte>("flags"),
        new Column<byte>("edges"),
    ];

    /// <summary>The bytes of the file; the same trials give the same bytes.</summary>
    public static byte[] Write(ReadOnlySpan<Trial> trials)
    {
        using var stream = new MemoryStream();
        using (var properties = Properties())
        using (var file = new ParquetFileWriter(stream, _columns, null, properties, null, leaveOpen: true))
        {
            using (var rows = file.AppendRowGroup())
            {
                WriteColumn(rows, trials, trial => trial.Sequence);
                WriteColumn(rows, trials, trial => trial.Segment);
                WriteColumn(rows, trials, trial => trial.PressTicks);
                WriteColumn(rows, trials, trial => trial.LatencyTicks);
                WriteColumn(rows, trials, trial => trial.LatencyHighTicks);
                WriteColumn(rows, trials, trial => (byte)trial.Outcome);
                WriteColumn(rows, trials, trial => (byte)trial.Flags);
                WriteColumn(rows, trials, trial => (byte)trial.Edges);
            }

            file.Close();
        }

        return stream.ToArray();
    }

    /// <summary>The trials of the file.</summary>
    /// <exception cref="InvalidDataException">It is not a Parquet file with these columns.</exception>
    public static Trial[] Read(byte[] content)
    {
        try
        {
            using var stream = new MemoryStream(content, writable: false);
            using var file = new ParquetFileReader(stream);
            RequireColumns(file.FileMetaData.Schema);
            var trials = new Trial[checked((int)file.FileMetaData.NumRows)];
            var done = 0;
            for (var group = 0; group < file.FileMetaData.NumRowGroups; group++)
            {
                using var rows = file.RowGroup(group);
                done += ReadRows(rows, trials.AsSpan(done));
            }

            return trials;
        }
        catch (Exception exception) when (exception is not InvalidDataException)
        {
            // The library has no one exception for a file that is damaged, and throws plain Exception for some of it.
            throw new InvalidDataException(exception.Message, exception);
        }
    }

    private static WriterProperties Properties()
    {
        using var builder = new WriterPropertiesBuilder();
        return builder
            .Compression(Compression.Zstd)
            .DisableDictionary()
            .Encoding(Encoding.DeltaBinaryPacked)
            .MaxRowGroupLength(int.MaxValue)
            .EnablePageChecksum()
            .Build();
    }

    private static void WriteColumn<T>(RowGroupWriter rows, ReadOnlySpan<Trial> trials, Func<Trial, T> value)
    {
        var values = new T[trials.Length];
        for (var i = 0; i < values.Length; i++)
        {
            values[i] = value(trials[i]);
        }

        using var column = rows.NextColumn().LogicalWriter<T>();
        column.WriteBatch(values);
    }

    private static int ReadRows(RowGroupReader rows, Span<Trial> trials)
    {
        var count = checked((int)rows.MetaData.NumRows);
        var sequence = ReadColumn<long>(rows, 0, count);
        var segment = ReadColumn<int>(rows, 1, count);
        var press = ReadColumn<long?>(rows, 2, count);
        var latency = ReadColumn<long?>(rows, 3, count);
        var latencyHigh = ReadColumn<long?>(rows, 4, count);
        var outcome = ReadColumn<byte>(rows, 5, count);
        var flags = ReadColumn<byte>(rows, 6, count);
        var edges = ReadColumn<byte>(rows, 7, count);
        for (var i = 0; i < count; i++)
        {
            trials[i] = new Trial(sequence[i], segment[i], press[i], latency[i], latencyHigh[i], (Outcome)outcome[i], (TrialFlags)flags[i], edges[i]);
        }

        return count;
    }

    private static T[] ReadColumn<T>(RowGroupReader rows, int index, int count)
    {
        using var column = rows.Column(index).LogicalReader<T>();
        return column.ReadAll(count);
    }

    private static void RequireColumns(SchemaDescriptor schema)
    {
        for (var index = 0; index < _columns.Length; index++)
        {
            var found = index < schema.NumColumns ? schema.Column(index).Name : null;
            if (found != _columns[index].Name)
            {
                throw new InvalidDataException($"Column {index + 1} is {(found is null ? "missing" : $"'{found}'")} where '{_columns[index].Name}' belongs.");
            }
        }
    }
}
