using System.Text;
using Tarry.Findings;
using Tarry.Findings.Json;
using Tarry.Reports.Documents;

namespace Tarry.Output;

/// <summary>Writes the report and the findings document beside it.</summary>
internal static class ReportFiles
{
    /// <summary>Writes both, each whole or not at all, and returns the report's path.</summary>
    public static string Write(FindingsDocument document, string folder)
    {
        Directory.CreateDirectory(folder);
        WriteWhole(Path.Combine(folder, "findings.json"), FindingsJson.Write(document));
        var report = Path.Combine(folder, "report.html");
        WriteWhole(report, ReportDocument.Write(document));
        return report;
    }

    private static void WriteWhole(string path, string text)
    {
        var temporary = path + ".tmp";
        try
        {
            File.WriteAllText(temporary, text, new UTF8Encoding(encoderShouldEmitUTF8Identifier: false));
            File.Move(temporary, path, overwrite: true);
        }
        finally
        {
            File.Delete(temporary);
        }
    }
}
