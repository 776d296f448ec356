using System.Text;
using Tarry.Findings.Json;
using Tarry.Findings.Sticks;

namespace Tarry.Reports.DataPackage;

/// <summary>
/// Writes a Frictionless Data Package (specs.frictionlessdata.io, version 1): trials, headline, findings, and recordings of reports and sticks
/// with their schemas, a README, and scripts that recompute the headline and what is said of sticks.
/// </summary>
/// <remarks>
/// <c>datapackage.json</c> is removed first and written last, with the SHA-256 of every other file as it lies on the disk: a folder
/// with a descriptor is a whole package. The same study, licence and version give the same bytes.
/// </remarks>
public static class DataPackageFolder
{
    /// <summary>The name of the descriptor.</summary>
    public const string DescriptorName = "datapackage.json";

    /// <summary>The name of the table of the recordings of sticks.</summary>
    public const string StickRecordingsName = PackageFiles.StickRecordings;

    private static readonly UTF8Encoding Utf8 = new(encoderShouldEmitUTF8Identifier: false);

    /// <summary>Writes the package.</summary>
    /// <param name="folder">Where; it is made if it is not there. Files of the package's names are replaced, others are left alone.</param>
    /// <param name="content">What goes in.</param>
    /// <returns>The path of the descriptor.</returns>
    /// <exception cref="IOException">The folder cannot be written to.</exception>
    public static string Write(string folder, DataPackageContent content)
    {
        ArgumentNullException.ThrowIfNull(folder);
        ArgumentNullException.ThrowIfNull(content);
        Directory.CreateDirectory(folder);
        File.Delete(Path.Combine(folder, DescriptorName));
        var columns = TrialsSchema.Of(content.TrialColumns, content.Study);
        PackagedFile[] files =
        [
            PackagedFile.Write(folder, PackageFiles.TrialsCsv, stream => Write(stream, content.WriteTrialsAsCsv)),
            PackagedFile.Write(folder, PackageFiles.TrialsParquet, content.WriteTrialsAsParquet),
            PackagedFile.Write(folder, HeadlineTable.FileName, Text(HeadlineTable.Write(content.Findings))),
            PackagedFile.Write(folder, PackageFiles.Findings, Text(FindingsJson.Write(content.Findings))),
            PackagedFile.Write(folder, PackageFiles.FindingsSchema, Text(PackageFiles.Shipped(PackageFiles.FindingsSchema))),
            PackagedFile.Write(folder, PackageFiles.RecheckR, Text(PackageFiles.Shipped(PackageFiles.RecheckR))),
            PackagedFile.Write(folder, PackageFiles.RecheckPython, Text(PackageFiles.Shipped(PackageFiles.RecheckPython))),
            .. content.HasSticks ? Sticks(folder, content) : [],
            .. content.Recordings.SelectMany(recording => new[]
            {
                PackagedFile.Write(folder, recording.CsvName, stream => Write(stream, recording.WriteCsv)),
                PackagedFile.Write(folder, recording.ParquetName, recording.WriteParquet),
                PackagedFile.Write(folder, recording.RecordName, stream => stream.Write(recording.Record.Span)),
            }),
            PackagedFile.Write(folder, PackageFiles.Readme, Text(PackageReadme.Write(content, columns))),
        ];
        PackagedFile.Write(folder, DescriptorName, Text(DataPackageDescriptor.Write(content, columns, files)));
        return Path.Combine(folder, DescriptorName);
    }

    private static PackagedFile[] Sticks(string folder, DataPackageContent content) =>
    [
        PackagedFile.Write(folder, PackageFiles.StickRecordings, stream => Write(stream, content.WriteStickRecordings)),
        PackagedFile.Write(folder, StickFindingsTable.FileName, Text(StickFindingsTable.Write(content.Findings.Sticks ?? StudySticks.None))),
        PackagedFile.Write(folder, PackageFiles.RecheckSticksR, Text(PackageFiles.Shipped(PackageFiles.RecheckSticksR))),
        PackagedFile.Write(folder, PackageFiles.RecheckSticksPython, Text(PackageFiles.Shipped(PackageFiles.RecheckSticksPython))),
    ];

    private static Action<Stream> Text(string text) => stream => stream.Write(Utf8.GetBytes(text));

    private static void Write(Stream stream, Action<TextWriter> write)
    {
        using var writer = new StreamWriter(stream, Utf8, leaveOpen: true);
        write(writer);
    }
}
