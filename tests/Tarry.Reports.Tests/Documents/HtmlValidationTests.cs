using System.Diagnostics;
using System.Runtime.CompilerServices;
using Tarry.Reports.Documents;
using Tarry.Reports.Tests.Figures;
using Tarry.Tests;

namespace Tarry.Reports.Tests.Documents;

/// <summary>The report against a general HTML validator, html-validate from npm.</summary>
/// <remarks>
/// Its recommended and its document rules, with three taken out: the length of a study's title is its owner's; roles of table parts are stated although
/// implied, because browsers drop the implied ones from a table that is shown as cards; and empty elements close themselves, so that XML readers take the report as well.
/// </remarks>
public sealed class HtmlValidationTests
{
    [Fact]
    public void Write_EveryStudy_PassesAGeneralValidator()
    {
        var folder = Directory.CreateTempSubdirectory("tarry-html-");
        try
        {
            foreach (var (name, document) in FigureTests.Studies)
            {
                File.WriteAllText(Path.Combine(folder.FullName, $"{name}.html"), ReportDocument.Write(document));
            }

            var (exitCode, output) = Validate(folder.FullName);
            Assert.True(exitCode == 0, output);
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }

    [Fact]
    public void Validator_PageWithFaults_IsRefused()
    {
        var folder = Directory.CreateTempSubdirectory("tarry-html-");
        try
        {
            File.WriteAllText(Path.Combine(folder.FullName, "faulty.html"), "<!DOCTYPE html>\n<html lang=\"en\"><head><title>t</title></head><body><p id=\"a\"><ul></ul></p><p id=\"a\">t</p></body></html>\n");
            Assert.Equal(1, Validate(folder.FullName).ExitCode);
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }

    private static (int ExitCode, string Output) Validate(string folder)
    {
        var node = Requirement.Program("node", "nodejs");
        var validator = Path.Combine(ProjectFolder(), "node_modules", "html-validate", "bin", "html-validate.mjs");
        Requirement.Needs(File.Exists(validator), "html-validate (npm ci in tests/Tarry.Reports.Tests)");
        var start = new ProcessStartInfo(node) { RedirectStandardOutput = true, RedirectStandardError = true, WorkingDirectory = folder };
        string[] arguments = [validator, "--config", Path.Combine(ProjectFolder(), ".htmlvalidate.json"), "--formatter", "text", .. Directory.GetFiles(folder)];
        foreach (var argument in arguments)
        {
            start.ArgumentList.Add(argument);
        }

        using var process = Process.Start(start)!;
        var errors = process.StandardError.ReadToEndAsync();
        var output = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        return (process.ExitCode, output + errors.Result);
    }

    private static string ProjectFolder([CallerFilePath] string file = "") => Path.GetDirectoryName(Path.GetDirectoryName(file))!;
}
