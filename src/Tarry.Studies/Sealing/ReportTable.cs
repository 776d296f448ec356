using ParquetSharp;
using Tarry.Studies.Reports;

namespace Tarry.Studies.Sealing;

/// <summary>Reports as a Parquet file: the columns of <c>docs/study-format.md</c>. Written and read a row group at a time.</summary>
internal static class ReportTable
{
    /// <summary>Writes them; the same reports give the same bytes.</summary>
    public static void Write(Stream output, ReportStream stream, ReportLog reports)
    {
        using var properties = Properties(stream);
        using var file = new ParquetFileWriter(output, Columns(stream), null, properties, null, leaveOpen: true);
        ReportRowGroups.Write(file, stream, reports, tick => tick);
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
        catch (Exception exception) when (exception is not InvalidDataException && (exception is not IOException || exception is EndOfStreamException))
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
            Fill(ticks, tick.AsSpan(0, count));
            Fill(endpoints, from.AsSpan(0, count));
            Fill(data, bytes.AsSpan(0, count));
            for (var row = 0; row < count; row++)
            {
                take(tick[row], from[row], bytes[row]);
            }

            left -= count;
        }
    }

    private static void Fill<T>(LogicalColumnReader<T> column, Span<T> values)
    {
        if (column.ReadBatch(values) < values.Length)
        {
            throw new InvalidDataException("A column is shorter than its row group.");
        }
    }

    private static void Compare(
        RowGroupReader rows, ReportStream stream, ReportLog reports, int first, Action<string> disagrees)
    {
        var batch = new ReportBatch(stream, reports);
        using var ids = rows.Column(2).LogicalReader<int?>();
        var fields = stream.Fields.Select((field, index) => (Field: field, Column: rows.Column(ReportColumns.Fixed.Count + index).LogicalReader<long?>())).ToList();
        var (id, value) = (new int?[ReportBatch.Rows], new long?[ReportBatch.Rows]);
        for (; first < reports.Count; first += ReportBatch.Rows)
        {
            var count = Math.Min(ReportBatch.Rows, reports.Count - first);
            batch.Take(first, count);
            Fill(ids, id.AsSpan(0, count));
            for (var row = 0; row < count; row++)
            {
                Require("report_id", row, id[row], batch.ReportIds[row]);
            }

            foreach (var (field, column) in fields)
            {
                Fill(column, value.AsSpan(0, count));
                var inBytes = batch.ValuesOf(field);
                for (var row = 0; row < count; row++)
                {
                    Require(field.Column, row, value[row], inBytes[row]);
                }
            }
        }

        fields.ForEach(field => field.Column.Dispose());

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
