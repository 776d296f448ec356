using Tarry.Findings;
using Tarry.Findings.Json;
using Tarry.Reports.Documents;

namespace Tarry.Output;

/// <summary>Writes the report and the findings document beside it.</summary>
internal static class ReportFiles
{
    /// <summary>Writes both and returns the report's path.</summary>
    public static string Write(FindingsDocument document, string folder)
    {
        WholeFile.Write(Path.Combine(folder, "findings.json"), writer => writer.Write(FindingsJson.Write(document)));
        return WholeFile.Write(Path.Combine(folder, "report.html"), writer => writer.Write(ReportDocument.Write(document)));
    }
}
