using System.CommandLine;
using System.Text.Json;
using Tarry.Output;
using Tarry.Studies;

namespace Tarry.Commands;

/// <summary><c>tarry check</c>: whether a study is whole, and what its data need.</summary>
internal static class CheckCommand
{
    public static Command Create(Terminal terminal)
    {
        var study = StudyArgument.Create();
        var json = new Option<bool>("--json") { Description = "Answer as JSON." };
        var command = new Command("check", "Checks that a study is whole: every sealed file against its hash, every trial against the rules. Exit code 1 if not.\n\nExample: tarry check pads")
        {
            study, json,
        };
        command.SetAction(parsed =>
        {
            var checkedStudy = StudyCheck.Run(Study.Open(parsed.GetRequiredValue(study)));
            if (parsed.GetValue(json))
            {
                terminal.Out.WriteLine(JsonSerializer.Serialize(checkedStudy, CheckJson.Options));
            }
            else
            {
                Write(terminal, checkedStudy);
            }

            return checkedStudy.Passed ? ExitCode.Done : ExitCode.DataSaysNo;
        });
        return command;
    }

    private static void Write(Terminal terminal, StudyCheckResult result)
    {
        foreach (var problem in result.Problems)
        {
            terminal.Out.WriteLine($"{problem.Place}: {problem.Message}");
            terminal.Out.WriteLine($"  what to do: {problem.Remedy}");
        }

        terminal.Out.WriteLine(result.Passed ? "The study is whole." : "The study is not whole.");
    }
}
