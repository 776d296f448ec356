using System.CommandLine;
using Tarry.Findings;
using Tarry.Output;
using Tarry.Reports.Publishing;
using Tarry.Studies;
using static System.FormattableString;

namespace Tarry.Commands;

/// <summary><c>tarry report</c>: writes the report.</summary>
internal static class ReportCommand
{
    public static Command Create(Terminal terminal)
    {
        var study = StudyArgument.Create();
        var output = new Option<string?>("--out") { Description = "Folder to write to; STUDY/report if not given." }.MustNotBeEmpty();
        var figures = new Option<bool>("--figures") { Description = "Writes every figure too, for video and print: SVG, and PNG at 1920x1080 and 3840x2160, light, dark and on a clear ground." };
        var seed = SeedOption.Create();
        var play = new PlayOptions();
        var command = new Command("report", "Writes the report, one HTML file that needs nothing else, and the findings document beside it.\n\nExample: tarry report pads --figures --out published")
        {
            study, output, figures, seed,
        };
        play.AddTo(command);
        command.SetAction((parsed, cancellation) => Task.Run(
            () =>
            {
                var opened = Study.Open(parsed.GetRequiredValue(study));
                var document = StudyAnalysis.Run(opened, parsed.GetValue(seed), ProgramVersion.Text, play.Read(parsed), cancellation);
                var folder = parsed.GetValue(output) ?? Path.Combine(opened.Folder, "report");
                terminal.Out.WriteLine(ReportFiles.Write(document, folder));
                if (parsed.GetValue(figures))
                {
                    var figureFolder = Path.Combine(folder, "figures");
                    var files = FigureFiles.Write(document, figureFolder, cancellation: cancellation);
                    terminal.Out.WriteLine(Invariant($"{figureFolder} ({files} files)"));
                }

                return ExitCode.Done;
            },
            cancellation));
        return command;
    }
}
