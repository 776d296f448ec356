using Tarry.Findings;
using Tarry.Imports.DelimitedText;
using Tarry.Imports.LongForm;
using Tarry.Imports.ReportStreams;
using Tarry.Imports.Sticks;
using Tarry.Reports.DataPackage;
using Tarry.Studies;

namespace Tarry.Web.Publishing;

/// <summary>What of a study goes into its data package, whoever asks for it: the command line or the page.</summary>
public static class StudyPackage
{
    /// <summary>The content of the package.</summary>
    /// <param name="study">The study; its sessions are read when they are written.</param>
    /// <param name="findings">What it says.</param>
    /// <param name="licence">The licence; null if the publisher states none.</param>
    /// <param name="author">Who publishes it; null for nobody.</param>
    /// <param name="version">The version of the publication.</param>
    /// <param name="cancellation">Stops the writing.</param>
    public static DataPackageContent Content(Study study, FindingsDocument findings, Licence? licence, string? author, string version, CancellationToken cancellation)
    {
        ArgumentNullException.ThrowIfNull(study);
        return new DataPackageContent
        {
            Findings = findings,
            Study = study.File,
            Sessions = [.. study.SessionKeys.Select(key => study.Read(key).Record)],
            Recordings = Recordings(study, cancellation),
            Licence = licence,
            Author = author,
            Version = version,
            TrialColumns = LongFormWriter.ColumnNames(study.File),
            WriteTrialsAsCsv = writer => StudyTrials.WriteCsv(study, writer, cancellation),
            WriteTrialsAsParquet = stream => StudyTrials.WriteParquet(study, stream, cancellation),
            StickRecordingColumns = StickRecordingsWriter.ColumnNames(study.File),
            WriteStickRecordings = writer => StickRecordingsWriter.Write(writer, study, cancellation),
        };
    }

    /// <summary>The sessions of reports, then those of sticks: a table and a record each.</summary>
    /// <param name="study">The study.</param>
    /// <param name="cancellation">Stops the writing.</param>
    public static IReadOnlyList<PackagedRecording> Recordings(Study study, CancellationToken cancellation) =>
    [
        .. PackagedRecording.Reports(study, (session, writer) => ReportCsvWriter.Write(writer, session, cancellation), (session, stream) => ReportParquetWriter.Write(stream, session, cancellation)),
        .. PackagedRecording.Sticks(study, (session, writer) => StickCsvWriter.Write(writer, session, cancellation), (session, stream) => StickParquetWriter.Write(stream, session, cancellation)),
    ];
}
