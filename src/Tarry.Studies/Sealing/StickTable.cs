using ParquetSharp;
using Tarry.Studies.Sticks;

namespace Tarry.Studies.Sealing;

/// <summary>The positions of a stick as a Parquet file: the columns of <c>docs/study-format.md</c>.</summary>
internal static class StickTable
{
    /// <summary>The bytes of the file; the same positions give the same bytes.</summary>
    public static byte[] Write(StickSamples samples)
    {
        using var stream = new MemoryStream();
        using (var properties = Properties())
        using (var file = new ParquetFileWriter(stream, Columns(StimulusOf(samples)), null, properties, null, leaveOpen: true))
        {
            using (var rows = file.AppendRowGroup())
            {
                WriteColumn(rows, samples.Ticks);
                WriteColumn(rows, samples.X);
                WriteColumn(rows, samples.Y);
                WriteStimulus(rows, samples.Stimulus);
                WriteStimulus(rows, samples.StimulusY);
            }

            file.Close();
        }

        return stream.ToArray();
    }

    /// <summary>The positions of the file.</summary>
    /// <exception cref="InvalidDataException">It is not a Parquet file with the columns of such a stimulus, or what it holds breaks a rule.</exception>
    public static StickSamples Read(byte[] content, StickStimulus stimulus)
    {
        try
        {
            using var stream = new MemoryStream(content, writable: false);
            using var properties = ReaderProperties.GetDefaultReaderProperties();
            properties.EnablePageChecksumVerification();
            using var file = new ParquetFileReader(stream, properties);
            RequireColumns(file.FileMetaData.Schema, stimulus);
            return new StickSamples(
                ReadColumn<long>(file, 0),
                ReadColumn<double>(file, 1),
                ReadColumn<double>(file, 2),
                stimulus == StickStimulus.None ? null : ReadStimulus(file, 3),
                stimulus == StickStimulus.Level ? ReadStimulus(file, 4) : null);
        }
        catch (Exception exception) when (exception is not InvalidDataException)
        {
            // The library has no one exception for a file that is damaged, and throws plain Exception for some of it.
            throw new InvalidDataException(exception.Message, exception);
        }
    }

    private static StickStimulus StimulusOf(StickSamples samples) =>
        samples.Stimulus.IsEmpty ? StickStimulus.None : samples.StimulusY.IsEmpty ? StickStimulus.Angle : StickStimulus.Level;

    private static Column[] Columns(StickStimulus stimulus) =>
    [
        new Column<long>("tick"),
        new Column<double>("x"),
        new Column<double>("y"),
        .. StimulusColumns(stimulus).Select(name => new Column<double?>(name)),
    ];

    private static string[] StimulusColumns(StickStimulus stimulus) => stimulus switch
    {
        StickStimulus.Angle => ["stimulus_deg"],
        StickStimulus.Level => ["stimulus_x", "stimulus_y"],
        _ => [],
    };

    private static WriterProperties Properties()
    {
        using var builder = new WriterPropertiesBuilder();
        return builder
            .Compression(Compression.Zstd)
            .DisableDictionary("tick")
            .Encoding("tick", Encoding.DeltaBinaryPacked)
            .MaxRowGroupLength(int.MaxValue)
            .EnablePageChecksum()
            .Build();
    }

    private static void WriteColumn<T>(RowGroupWriter rows, ReadOnlySpan<T> values)
    {
        using var column = rows.NextColumn().LogicalWriter<T>();
        column.WriteBatch(values);
    }

    private static void WriteStimulus(RowGroupWriter rows, ReadOnlySpan<double> values)
    {
        if (!values.IsEmpty)
        {
            WriteColumn<double?>(rows, Array.ConvertAll<double, double?>(values.ToArray(), value => double.IsNaN(value) ? null : value));
        }
    }

    private static T[] ReadColumn<T>(ParquetFileReader file, int index)
    {
        var values = new List<T>(checked((int)file.FileMetaData.NumRows));
        for (var group = 0; group < file.FileMetaData.NumRowGroups; group++)
        {
            using var rows = file.RowGroup(group);
            using var column = rows.Column(index).LogicalReader<T>();
            values.AddRange(column.ReadAll(checked((int)rows.MetaData.NumRows)));
        }

        return [.. values];
    }

    private static double[] ReadStimulus(ParquetFileReader file, int index) =>
        Array.ConvertAll(ReadColumn<double?>(file, index), value => value ?? double.NaN);

    private static void RequireColumns(SchemaDescriptor schema, StickStimulus stimulus)
    {
        string[] expected = ["tick", "x", "y", .. StimulusColumns(stimulus)];
        var found = Enumerable.Range(0, schema.NumColumns).Select(index => schema.Column(index).Name).ToList();
        if (!found.SequenceEqual(expected))
        {
            throw new InvalidDataException($"Its columns are {string.Join(", ", found)}, where {string.Join(", ", expected)} belong.");
        }
    }
}
