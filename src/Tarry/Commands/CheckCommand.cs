using System.CommandLine;
using System.Text.Json;
using Tarry.Output;
using Tarry.Studies;
using static System.FormattableString;

namespace Tarry.Commands;

/// <summary><c>tarry check</c>: whether a study is whole, and what its data need.</summary>
internal static class CheckCommand
{
    private static readonly JsonSerializerOptions Options = new() { PropertyNamingPolicy = JsonNamingPolicy.SnakeCaseLower, WriteIndented = true };

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
                terminal.Out.WriteLine(Json(checkedStudy));
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
        foreach (var session in result.Sessions)
        {
            var state = session.Sealed ? "" : ", not sealed: the same run command goes on with it";
            var torn = session.TornBytes > 0 ? Invariant($", {session.TornBytes} bytes of a torn last line") : "";
            terminal.Out.WriteLine(session.Counts is { } counts
                ? Invariant($"{session.Key}: captured {counts.Captured} = used {counts.Used} + missed {counts.Missed} + early {counts.Early} + refused {counts.Refused} + excluded {counts.Excluded}{state}{torn}")
                : session.Reports is { } reports ? Invariant($"{session.Key}: {reports} reports")
                : session.Positions is { } positions ? Invariant($"{session.Key}: {positions} positions of a stick")
                : $"{session.Key}: cannot be read{state}{torn}");
        }

        foreach (var problem in result.Problems)
        {
            terminal.Error.WriteLine($"{problem.Place}: {problem.Message}");
            terminal.Error.WriteLine($"  what to do: {problem.Remedy}");
        }

        terminal.Out.WriteLine(result.Passed ? "The study is whole." : "The study is not whole.");
    }

    private static string Json(StudyCheckResult result)
    {
        var document = new
        {
            result.Passed,
            Problems = result.Problems.Select(problem => new { Kind = problem.Kind.ToString(), problem.Place, problem.Message, problem.Remedy }),
            Sessions = result.Sessions.Select(session => new { Session = session.Key.ToString(), session.Sealed, session.Counts, session.Reports, session.Positions, session.TornBytes }),
        };
        return JsonSerializer.Serialize(document, Options);
    }
}
