using ParquetSharp;
using Tarry.Studies.Reports;

namespace Tarry.Studies.Sealing;

/// <summary>Reports as a Parquet file: the columns of <c>docs/study-format.md</c>. Written and read a row group at a time.</summary>
internal static class ReportTable
{
    private const int RowsInGroup = 131_072;

    /// <summary>Writes them; the same reports give the same bytes.</summary>
    public static void Write(Stream output, ReportStream stream, ReportLog reports)
    {
        using var properties = Properties(stream);
        using var file = new ParquetFileWriter(output, Columns(stream), null, properties, null, leaveOpen: true);
        var batch = new ReportBatch(stream, reports);
        for (var first = 0; first < reports.Count; first += RowsInGroup)
        {
            WriteGroup(file, stream, batch, first, Math.Min(RowsInGroup, reports.Count - first));
        }

        file.Close();
    }

    /// <summary>Whether the file holds these reports, and no others.</summary>
    /// <exception cref="InvalidDataException">It is not a Parquet file with these columns.</exception>
    public static bool Holds(Stream content, ReportStream stream, ReportLog reports) => WithGroups(content, stream, groups =>
    {
        var first = 0;
        foreach (var rows in groups)
        {
            var same = true;
            WalkRows(rows, (tick, from, data) =>
            {
                same = same && first < reports.Count && tick == reports.Tick(first) && from == reports.Endpoint(first) && reports.Data(first).SequenceEqual(data);
                first++;
            });
            if (!same)
            {
                return false;
            }
        }

        return first == reports.Count;
    });

    /// <summary>The reports of the file. The columns of fields are left aside: they are in the bytes.</summary>
    /// <exception cref="InvalidDataException">It is not a Parquet file with these columns.</exception>
    public static ReportLog Read(Stream content, ReportStream stream) => Walk(content, stream, null);

    /// <summary>Says which column does not hold what the bytes of the reports say, and in which row; null if all do.</summary>
    /// <exception cref="InvalidDataException">It is not a Parquet file with these columns.</exception>
    public static (ReportLog Reports, string? Disagreement) Check(Stream content, ReportStream stream)
    {
        string? first = null;
        return (Walk(content, stream, found => first ??= found), first);
    }

    private static ReportLog Walk(Stream content, ReportStream stream, Action<string>? disagrees) => WithGroups(content, stream, groups =>
    {
        var endpoints = stream.Endpoints.Select(endpoint => endpoint.Number).ToHashSet();
        var reports = new ReportLog();
        foreach (var rows in groups)
        {
            var first = reports.Count;
            ReadRows(rows, reports, endpoints);
            if (disagrees is not null)
            {
                Compare(rows, stream, reports, first, disagrees);
            }
        }

        return reports.IsInOrder ? reports : throw new InvalidDataException("The ticks of the reports go back.");
    });

    private static T WithGroups<T>(Stream content, ReportStream stream, Func<IEnumerable<RowGroupReader>, T> read)
    {
        try
        {
            using var properties = ReaderProperties.GetDefaultReaderProperties();
            properties.EnablePageChecksumVerification();
            using var file = new ParquetFileReader(content, properties, leaveOpen: true);
            RequireColumns(file.FileMetaData.Schema, stream);
            return read(Groups(file));
        }
        catch (Exception exception) when (exception is not InvalidDataException)
        {
            // The library has no one exception for a file that is damaged, and throws plain Exception for some of it.
            throw new InvalidDataException(exception.Message, exception);
        }
    }

    private static IEnumerable<RowGroupReader> Groups(ParquetFileReader file)
    {
        for (var group = 0; group < file.FileMetaData.NumRowGroups; group++)
        {
            using var rows = file.RowGroup(group);
            yield return rows;
        }
    }

    private static void ReadRows(RowGroupReader rows, ReportLog reports, HashSet<int> endpoints) => WalkRows(rows, (tick, from, data) =>
    {
        if (!endpoints.Contains(from))
        {
            throw new InvalidDataException($"Row {reports.Count + 1} is of endpoint {from}, which session.json does not have.");
        }

        reports.Add(tick, from, data ?? throw new InvalidDataException($"Row {reports.Count + 1} has no bytes."));
    });

    // Some rows of all three columns at a time: a whole group of bytes would be as many arrays as it has rows.
    private static void WalkRows(RowGroupReader rows, Action<long, int, byte[]?> take)
    {
        using var ticks = rows.Column(0).LogicalReader<long>();
        using var endpoints = rows.Column(1).LogicalReader<int>();
        using var data = rows.Column(3).LogicalReader<byte[]?>();
        var (tick, from, bytes) = (new long[ReportBatch.Rows], new int[ReportBatch.Rows], new byte[]?[ReportBatch.Rows]);
        for (var left = rows.MetaData.NumRows; left > 0;)
        {
            var count = (int)Math.Min(left, ReportBatch.Rows);
            if (ticks.ReadBatch(tick.AsSpan(0, count)) < count || endpoints.ReadBatch(from.AsSpan(0, count)) < count || data.ReadBatch(bytes.AsSpan(0, count)) < count)
            {
                throw new InvalidDataException("A column is shorter than its row group.");
            }

            for (var row = 0; row < count; row++)
            {
                take(tick[row], from[row], bytes[row]);
            }

            left -= count;
        }
    }

    private static void Compare(
        RowGroupReader rows, ReportStream stream, ReportLog reports, int first, Action<string> disagrees)
    {
        var count = reports.Count - first;
        var ids = ReadColumn<int?>(rows, 2, count);
        for (var row = 0; row < count; row++)
        {
            Require("report_id", row, ids[row], stream.ReportIdOf(reports, first + row));
        }

        for (var index = 0; index < stream.Fields.Count; index++)
        {
            var field = stream.Fields[index];
            var values = ReadColumn<long?>(rows, ReportColumns.Fixed.Count + index, count);
            for (var row = 0; row < count; row++)
            {
                Require(field.Column, row, values[row], stream.ValueOf(field, reports, first + row));
            }
        }

        void Require(string column, int row, long? stored, long? inBytes)
        {
            if (stored != inBytes)
            {
                disagrees($"column {column} has {Word(stored)} in row {first + row + 1}, and the bytes of the report say {Word(inBytes)}");
            }
        }
    }

    private static string Word(long? value) => value?.ToString(System.Globalization.CultureInfo.InvariantCulture) ?? "null";

    private static Column[] Columns(ReportStream stream) =>
    [
        new Column<long>("tick"),
        new Column<int>("endpoint"),
        new Column<int?>("report_id"),
        new Column<byte[]>("data"),
        .. stream.Fields.Select(field => new Column<long?>(field.Column)),
    ];

    private static WriterProperties Properties(ReportStream stream)
    {
        using var builder = new WriterPropertiesBuilder();
        builder.Compression(Compression.Zstd).DisableDictionary("tick").Encoding("tick", Encoding.DeltaBinaryPacked).EnablePageChecksum();
        foreach (var field in stream.Fields.Where(field => field.BitSize > 8))
        {
            builder.DisableDictionary(field.Column).Encoding(field.Column, Encoding.DeltaBinaryPacked);
        }

        return builder.Build();
    }

    // All columns of a batch before the next batch: the reports are walked through once.
    private static void WriteGroup(ParquetFileWriter file, ReportStream stream, ReportBatch batch, int first, int count)
    {
        using var rows = file.AppendBufferedRowGroup();
        using var ticks = rows.Column(0).LogicalWriter<long>();
        using var endpoints = rows.Column(1).LogicalWriter<int>();
        using var ids = rows.Column(2).LogicalWriter<int?>();
        using var data = rows.Column(3).LogicalWriter<byte[]>();
        var fields = stream.Fields.Select((field, index) => (Field: field, Column: rows.Column(ReportColumns.Fixed.Count + index).LogicalWriter<long?>())).ToList();
        for (var at = 0; at < count; at += ReportBatch.Rows)
        {
            batch.Take(first + at, Math.Min(ReportBatch.Rows, count - at));
            ticks.WriteBatch(batch.Ticks);
            endpoints.WriteBatch(batch.Endpoints);
            ids.WriteBatch(batch.ReportIds);
            data.WriteBatch(batch.Data);
            foreach (var (field, column) in fields)
            {
                column.WriteBatch(batch.ValuesOf(field));
            }
        }

        fields.ForEach(field => field.Column.Dispose());
    }

    private static T[] ReadColumn<T>(RowGroupReader rows, int index, int count)
    {
        using var column = rows.Column(index).LogicalReader<T>();
        return column.ReadAll(count);
    }

    private static void RequireColumns(SchemaDescriptor schema, ReportStream stream)
    {
        string[] expected = [.. ReportColumns.Fixed, .. stream.Fields.Select(field => field.Column)];
        for (var index = 0; index < Math.Max(expected.Length, schema.NumColumns); index++)
        {
            var found = index < schema.NumColumns ? schema.Column(index).Name : null;
            var wanted = index < expected.Length ? expected[index] : null;
            if (found != wanted)
            {
                throw new InvalidDataException($"Column {index + 1} is {(found is null ? "missing" : $"'{found}'")} where {(wanted is null ? "none" : $"'{wanted}'")} belongs.");
            }
        }
    }
}
