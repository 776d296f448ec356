using Tarry.Findings;
using Tarry.Reports.DataPackage;
using Tarry.Studies;
using Tarry.Web.Publishing;

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
        var findings = StudyAnalysis.Run(study, seed, ProgramVersion.Text, cancellation);
        var written = DataPackageFolder.Write(folder ?? Path.Combine(study.Folder, FolderInStudy), StudyPackage.Content(study, findings, licence, author, version, cancellation));
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
