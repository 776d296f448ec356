using Tarry.Imports.ReportStreams;
using Tarry.Reports.DataPackage;
using Tarry.Reports.Publishing;
using Tarry.Studies;

namespace Tarry.Output;

/// <summary>Writes the sessions of reports of a study as files: a table and the session's record each, under <c>reports/</c>.</summary>
internal static class ExportedReports
{
    /// <summary>Writes them and returns the paths of the tables.</summary>
    /// <param name="study">The study.</param>
    /// <param name="folder">Where to; the folder <c>reports</c> is made in it.</param>
    /// <param name="parquet">Whether as Parquet, else as CSV.</param>
    /// <param name="cancellation">Stops between sessions.</param>
    public static IReadOnlyList<string> Write(Study study, string folder, bool parquet, CancellationToken cancellation)
    {
        var written = new List<string>();
        foreach (var reports in PackagedReports.Of(study, (session, writer) => ReportCsvWriter.Write(writer, session, cancellation), (session, stream) => ReportParquetWriter.Write(stream, session, cancellation)))
        {
            cancellation.ThrowIfCancellationRequested();
            var table = Path.Combine(folder, parquet ? reports.ParquetName : reports.CsvName);
            written.Add(parquet ? WholeFile.WriteBytes(table, reports.WriteParquet) : WholeFile.Write(table, reports.WriteCsv));
            WholeFile.WriteBytes(Path.Combine(folder, reports.RecordName), stream => stream.Write(reports.Record.Span));
        }

        return written;
    }
}
