using System.CommandLine;
using Tarry.Imports.DelimitedText;
using Tarry.Output;
using Tarry.Studies;

namespace Tarry.Commands;

/// <summary><c>tarry export</c>: writes the trials for other programs.</summary>
internal static class ExportCommand
{
    public static Command Create(Terminal terminal)
    {
        var study = StudyArgument.Create();
        var format = new Option<string>("--format") { Description = "csv: long-form, one row a trial.", DefaultValueFactory = _ => "csv" };
        format.AcceptOnlyFromAmong("csv");
        var output = new Option<string?>("--out") { Description = "Folder to write trials.csv to; standard output if not given." }.MustNotBeEmpty();
        var command = new Command("export", "Writes every trial, with factors, flags and exclusions, as long-form CSV.\n\nExample: tarry export pads --format csv --out published")
        {
            study, format, output,
        };
        command.SetAction((parsed, cancellation) => Task.Run(
            () =>
            {
                var opened = Study.Open(parsed.GetRequiredValue(study));
                if (parsed.GetValue(output) is { } folder)
                {
                    terminal.Out.WriteLine(WholeFile.Write(Path.Combine(folder, "trials.csv"), writer => Write(opened, writer, cancellation)));
                }
                else
                {
                    Write(opened, terminal.Out, cancellation);
                }

                return ExitCode.Done;
            },
            cancellation));
        return command;
    }

    private static void Write(Study study, TextWriter writer, CancellationToken cancellation) =>
        LongFormWriter.Write(writer, study.File, study.SessionKeys.Select(study.Read), cancellation);
}
