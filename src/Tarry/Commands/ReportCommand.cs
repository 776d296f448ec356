using System.CommandLine;
using Tarry.Findings;
using Tarry.Output;
using Tarry.Studies;

namespace Tarry.Commands;

/// <summary><c>tarry report</c>: writes the report.</summary>
internal static class ReportCommand
{
    public static Command Create(Terminal terminal)
    {
        var study = StudyArgument.Create();
        var output = new Option<string?>("--out") { Description = "Folder to write to; STUDY/report if not given." }.MustNotBeEmpty();
        var seed = SeedOption.Create();
        var command = new Command("report", "Writes the report, one HTML file that needs nothing else, and the findings document beside it.\n\nExample: tarry report pads --out published")
        {
            study, output, seed,
        };
        command.SetAction((parsed, cancellation) => Task.Run(
            () =>
            {
                var opened = Study.Open(parsed.GetRequiredValue(study));
                var document = StudyAnalysis.Run(opened, parsed.GetValue(seed), ProgramVersion.Text, cancellation);
                terminal.Out.WriteLine(ReportFiles.Write(document, parsed.GetValue(output) ?? Path.Combine(opened.Folder, "report")));
                return ExitCode.Done;
            },
            cancellation));
        return command;
    }
}
