using ParquetSharp;
using Tarry.Studies.Reports;
using Tarry.Studies.Sealing;

namespace Tarry.Imports.ReportStreams;

/// <summary>Writes a session of reports as Parquet, with the columns, rows and numbers of <see cref="ReportCsvWriter"/>; the bytes of a report are bytes, and what is empty there is null.</summary>
public static class ReportParquetWriter
{
    /// <summary>Writes all reports.</summary>
    /// <param name="output">Where to; it is left open.</param>
    /// <param name="session">The session.</param>
    /// <param name="cancellation">Stops between row groups.</param>
    /// <exception cref="OperationCanceledException">The writing was stopped.</exception>
    public static void Write(Stream output, ReportSession session, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(output);
        ArgumentNullException.ThrowIfNull(session);
        var (stream, reports) = (session.Stream, session.Reports);
        Column[] columns = [new Column<double>("time_us"), new Column<int>("endpoint"), new Column<int?>("report_id"), new Column<byte[]>("data"), .. stream.Fields.Select(field => new Column<long?>(field.Column))];
        using var builder = new WriterPropertiesBuilder();
        using var properties = builder.Compression(Compression.Zstd).EnablePageChecksum().Build();
        using var file = new ParquetFileWriter(output, columns, null, properties, null, leaveOpen: true);
        ReportRowGroups.Write(file, stream, reports, tick => (double)TickTime.Microseconds(session.Record.Segments[0], tick), cancellation);
        file.Close();
    }
}
