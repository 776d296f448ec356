using Tarry.Findings;
using Tarry.Findings.Json;
using Tarry.Reports.Documents;

namespace Tarry.Reports.Publishing;

/// <summary>Writes the report and the findings document beside it.</summary>
public static class ReportFiles
{
    /// <summary>Writes both and returns the report's path.</summary>
    /// <param name="document">The findings.</param>
    /// <param name="folder">Where to; it is made if it is not there.</param>
    /// <param name="preface">What the author puts before the report; null for nothing.</param>
    public static string Write(FindingsDocument document, string folder, ReportPreface? preface = null)
    {
        ArgumentNullException.ThrowIfNull(document);
        WholeFile.Write(Path.Combine(folder, "findings.json"), writer => writer.Write(FindingsJson.Write(document)));
        return WholeFile.Write(Path.Combine(folder, "report.html"), writer => writer.Write(ReportDocument.Write(document, preface)));
    }
}
