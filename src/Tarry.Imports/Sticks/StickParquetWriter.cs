using ParquetSharp;
using Tarry.Studies.Sticks;

namespace Tarry.Imports.Sticks;

/// <summary>Writes the positions of a stick as Parquet, with the columns, rows and numbers of <see cref="StickCsvWriter"/>; what is empty there is null.</summary>
public static class StickParquetWriter
{
    private const int RowsInGroup = 131_072;

    /// <summary>Writes all positions.</summary>
    /// <param name="output">Where to; it is left open.</param>
    /// <param name="session">The session.</param>
    /// <param name="cancellation">Stops between row groups.</param>
    /// <exception cref="OperationCanceledException">The writing was stopped.</exception>
    public static void Write(Stream output, StickSession session, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(output);
        ArgumentNullException.ThrowIfNull(session);
        var samples = session.Samples;
        var names = StickRows.Columns(session.Setup.Stimulus);
        Column[] columns = [.. names.Take(3).Select(name => new Column<double>(name)), .. names.Skip(3).Select(name => new Column<double?>(name))];
        using var builder = new WriterPropertiesBuilder();
        using var properties = builder.Compression(Compression.Zstd).EnablePageChecksum().Build();
        using var file = new ParquetFileWriter(output, columns, null, properties, null, leaveOpen: true);
        for (var first = 0; first < samples.Count; first += RowsInGroup)
        {
            cancellation.ThrowIfCancellationRequested();
            var count = Math.Min(RowsInGroup, samples.Count - first);
            using var group = file.AppendRowGroup();
            Write<double>(group, [.. Enumerable.Range(first, count).Select(index => (double)StickRows.TimeUs(session, index))]);
            Write(group, samples.X.Slice(first, count));
            Write(group, samples.Y.Slice(first, count));
            WriteStimulus(group, samples.Stimulus, first, count);
            WriteStimulus(group, samples.StimulusY, first, count);
        }

        file.Close();
    }

    private static void WriteStimulus(RowGroupWriter group, ReadOnlySpan<double> column, int first, int count)
    {
        if (!column.IsEmpty)
        {
            Write<double?>(group, Array.ConvertAll<double, double?>(column.Slice(first, count).ToArray(), value => double.IsNaN(value) ? null : value));
        }
    }

    private static void Write<T>(RowGroupWriter group, ReadOnlySpan<T> values)
    {
        using var column = group.NextColumn().LogicalWriter<T>();
        column.WriteBatch(values);
    }
}
