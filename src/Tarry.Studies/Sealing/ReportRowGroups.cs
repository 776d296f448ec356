using ParquetSharp;
using Tarry.Studies.Reports;

namespace Tarry.Studies.Sealing;

/// <summary>Reports as row groups of a Parquet file: when they came, their endpoint, id and bytes, and a column for each field.</summary>
public static class ReportRowGroups
{
    private const int RowsInGroup = 131_072;

    /// <summary>Writes all reports; the file has the columns already.</summary>
    /// <param name="file">The file.</param>
    /// <param name="stream">What the reports are.</param>
    /// <param name="reports">The reports.</param>
    /// <param name="time">From a tick to what the first column holds.</param>
    /// <param name="cancellation">Stops between row groups.</param>
    /// <exception cref="OperationCanceledException">The writing was stopped.</exception>
    public static void Write<T>(ParquetFileWriter file, ReportStream stream, ReportLog reports, Func<long, T> time, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(file);
        ArgumentNullException.ThrowIfNull(stream);
        ArgumentNullException.ThrowIfNull(reports);
        ArgumentNullException.ThrowIfNull(time);
        var (batch, times) = (new ReportBatch(stream, reports), new T[ReportBatch.Rows]);
        for (var first = 0; first < reports.Count; first += RowsInGroup)
        {
            cancellation.ThrowIfCancellationRequested();
            WriteGroup(first, Math.Min(RowsInGroup, reports.Count - first));
        }

        // All columns of a batch before the next batch: the reports are walked through once.
        void WriteGroup(int first, int count)
        {
            using var rows = file.AppendBufferedRowGroup();
            using var ticks = rows.Column(0).LogicalWriter<T>();
            using var endpoints = rows.Column(1).LogicalWriter<int>();
            using var ids = rows.Column(2).LogicalWriter<int?>();
            using var data = rows.Column(3).LogicalWriter<byte[]>();
            var fields = stream.Fields.Select((field, index) => (Field: field, Column: rows.Column(ReportColumns.Fixed.Count + index).LogicalWriter<long?>())).ToList();
            for (var at = 0; at < count; at += ReportBatch.Rows)
            {
                batch.Take(first + at, Math.Min(ReportBatch.Rows, count - at));
                for (var row = 0; row < batch.Ticks.Length; row++)
                {
                    times[row] = time(batch.Ticks[row]);
                }

                ticks.WriteBatch(times.AsSpan(0, batch.Ticks.Length));
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
    }
}
