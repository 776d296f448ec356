using Tarry.Findings;
using Tarry.Imports.DelimitedText;
using Tarry.Imports.LongForm;
using Tarry.Imports.ReportStreams;
using Tarry.Reports.DataPackage;
using Tarry.Studies;

namespace Tarry.Output;

/// <summary>Writes a study's data package.</summary>
internal static class PublishedPackage
{
    private const string FolderInStudy = "package";

    /// <summary>Writes it and returns the path of its descriptor.</summary>
    /// <exception cref="UsageException">The licence is not an identifier.</exception>
    public static string Write(Study study, string? folder, string? licenceId, string? author, string version, ulong seed, Terminal terminal, CancellationToken cancellation)
    {
        var licence = licenceId is null ? null : Licence.FromId(licenceId) ?? throw NoLicence(licenceId);
        var written = DataPackageFolder.Write(folder ?? Path.Combine(study.Folder, FolderInStudy), new DataPackageContent
        {
            Findings = StudyAnalysis.Run(study, seed, ProgramVersion.Text, cancellation),
            Study = study.File,
            Sessions = [.. study.SessionKeys.Select(key => study.Read(key).Record)],
            Reports = PackagedReports.Of(study, (session, writer) => ReportCsvWriter.Write(writer, session, cancellation), (session, stream) => ReportParquetWriter.Write(stream, session, cancellation)),
            Licence = licence,
            Author = author,
            Version = version,
            TrialColumns = LongFormWriter.ColumnNames(study.File),
            WriteTrialsAsCsv = writer => StudyTrials.WriteCsv(study, writer, cancellation),
            WriteTrialsAsParquet = stream => StudyTrials.WriteParquet(study, stream, cancellation),
        });
        if (licence is null)
        {
            terminal.Error.WriteLine($"tarry: the package states no licence, so others may not use it again. Give one with --licence, such as {string.Join(", ", Licence.UsualIds)}.");
        }

        return written;
    }

    private static UsageException NoLicence(string id) => new(
        $"'{id}' is not a licence's identifier: letters, digits, '.', '_' and '-'.",
        $"Give an SPDX identifier, such as {string.Join(", ", Licence.UsualIds)}.");
}
