using Tarry.Imports.Sticks;
using Tarry.Reports.DataPackage;
using Tarry.Reports.Publishing;
using Tarry.Studies;
using Tarry.Web.Publishing;

namespace Tarry.Output;

/// <summary>Writes the sessions of reports and of sticks of a study as files: a table and the session's record each, under <c>reports/</c> and <c>sticks/</c>.</summary>
internal static class ExportedRecordings
{
    /// <summary>Writes them and returns the paths of the tables.</summary>
    /// <param name="study">The study.</param>
    /// <param name="folder">Where to; the folders are made in it.</param>
    /// <param name="parquet">Whether as Parquet, else as CSV.</param>
    /// <param name="cancellation">Stops between sessions.</param>
    public static IReadOnlyList<string> Write(Study study, string folder, bool parquet, CancellationToken cancellation)
    {
        var written = new List<string>();
        if (study.StickKeys.Count > 0)
        {
            written.Add(WholeFile.Write(Path.Combine(folder, DataPackageFolder.StickRecordingsName), writer => StickRecordingsWriter.Write(writer, study, cancellation)));
        }

        foreach (var recording in StudyPackage.Recordings(study, cancellation))
        {
            cancellation.ThrowIfCancellationRequested();
            var table = Path.Combine(folder, parquet ? recording.ParquetName : recording.CsvName);
            written.Add(parquet ? WholeFile.WriteBytes(table, recording.WriteParquet) : WholeFile.Write(table, recording.WriteCsv));
            WholeFile.WriteBytes(Path.Combine(folder, recording.RecordName), stream => stream.Write(recording.Record.Span));
        }

        return written;
    }
}
