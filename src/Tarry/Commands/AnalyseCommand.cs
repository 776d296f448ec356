using System.CommandLine;
using Tarry.Findings;
using Tarry.Findings.Json;
using Tarry.Output;
using Tarry.Studies;

namespace Tarry.Commands;

/// <summary><c>tarry analyse</c>: what a study says.</summary>
internal static class AnalyseCommand
{
    public static Command Create(Terminal terminal)
    {
        var study = StudyArgument.Create();
        var json = new Option<bool>("--json") { Description = "The findings document as JSON (docs/findings.schema.json)." };
        var seed = SeedOption.Create();
        var play = new PlayOptions();
        var command = new Command("analyse", "Says what the study says: estimates with intervals, differences, verdicts, ranking, cautions.\n\nExample: tarry analyse pads --json > findings.json")
        {
            study, json, seed,
        };
        play.AddTo(command);
        command.SetAction((parsed, cancellation) => Task.Run(
            () =>
            {
                var document = StudyAnalysis.Run(Study.Open(parsed.GetRequiredValue(study)), parsed.GetValue(seed), ProgramVersion.Text, play.Read(parsed), cancellation);
                if (parsed.GetValue(json))
                {
                    terminal.Out.Write(FindingsJson.Write(document));
                }
                else
                {
                    FindingsText.Write(document, terminal);
                    PlayText.Write(document, terminal);
                    ReportStreamText.Write(document, terminal);
                    StickText.Write(document, terminal);
                }

                return ExitCode.Done;
            },
            cancellation));
        return command;
    }
}
