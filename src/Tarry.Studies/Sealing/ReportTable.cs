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
        for (var first = 0; first < reports.Count; first += RowsInGroup)
        {
            var count = Math.Min(RowsInGroup, reports.Count - first);
            using var rows = file.AppendRowGroup();
            WriteColumn(rows, first, count, reports.Tick);
            WriteColumn(rows, first, count, reports.Endpoint);
            WriteColumn(rows, first, count, index => stream.ReportIdOf(reports, index));
            WriteColumn(rows, first, count, index => reports.Data(index).ToArray());
            foreach (var field in stream.Fields)
            {
                WriteColumn(rows, first, count, index => stream.ValueOf(field, reports, index));
            }
        }

        file.Close();
    }

    /// <summary>Whether the file holds these reports, and no others; compared a row group at a time.</summary>
    /// <exception cref="InvalidDataException">It is not a Parquet file with these columns.</exception>
    public static bool Holds(Stream content, ReportStream stream, ReportLog reports) => WithGroups(content, stream, groups =>
    {
        var first = 0;
        foreach (var rows in groups)
        {
            var (ticks, from, data) = FixedColumns(rows);
            for (var row = 0; row < ticks.Length; row++, first++)
            {
                if (first >= reports.Count || ticks[row] != reports.Tick(first) || from[row] != reports.Endpoint(first) || !reports.Data(first).SequenceEqual(data[row]))
                {
                    return false;
                }
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

    private static (long[] Ticks, int[] From, byte[][] Data) FixedColumns(RowGroupReader rows)
    {
        var count = checked((int)rows.MetaData.NumRows);
        return (ReadColumn<long>(rows, 0, count), ReadColumn<int>(rows, 1, count), ReadColumn<byte[]>(rows, 3, count));
    }

    private static void ReadRows(RowGroupReader rows, ReportLog reports, HashSet<int> endpoints)
    {
        var (ticks, from, data) = FixedColumns(rows);
        for (var row = 0; row < ticks.Length; row++)
        {
            if (!endpoints.Contains(from[row]))
            {
                throw new InvalidDataException($"Row {reports.Count + 1} is of endpoint {from[row]}, which session.json does not have.");
            }

            reports.Add(ticks[row], from[row], data[row] ?? throw new InvalidDataException($"Row {reports.Count + 1} has no bytes."));
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

    private static void WriteColumn<T>(RowGroupWriter rows, int first, int count, Func<int, T> value)
    {
        var values = new T[count];
        for (var row = 0; row < count; row++)
        {
            values[row] = value(first + row);
        }

        using var column = rows.NextColumn().LogicalWriter<T>();
        column.WriteBatch(values);
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
