using System.CommandLine;
using Tarry.Findings;
using Tarry.Findings.Json;
using Tarry.Findings.Plans;
using Tarry.Output;
using Tarry.Reports.Documents;
using Tarry.Studies;

namespace Tarry.Commands;

/// <summary><c>tarry plan</c>: how many sittings and trials, what they cost, and in which order.</summary>
internal static class PlanCommand
{
    private const int MostSittings = 1000;

    public static Command Create(Terminal terminal)
    {
        var study = StudyArgument.Create();
        var options = new PlanOptions();
        var sittings = new Option<int?>("--sittings") { Description = "Sittings on the order sheet; as advised if not given." };
        var trials = new Option<int?>("--trials") { Description = "Trials in each session on the order sheet; as advised if not given." };
        var order = new Option<string?>("--order") { Description = "Writes the order of all runs to this CSV file." }.MustNotBeEmpty();
        var sheet = new Option<string?>("--sheet") { Description = "Writes the order as an HTML file to print: a page a sitting, with boxes to tick." }.MustNotBeEmpty();
        var port = new Option<string>("--port") { Description = "Serial port of the rig, for the commands on the sheet.", DefaultValueFactory = _ => "PORT" }.MustNotBeEmpty();
        var response = new Option<string>("--response") { Description = "What answers, for the commands on the sheet.", DefaultValueFactory = _ => "light" };
        response.AcceptOnlyFromAmong("light", "edge", "echo");
        var seed = SeedOption.Create();
        var json = new Option<bool>("--json") { Description = "The plan as JSON (docs/plan.schema.json)." };
        var command = new Command(
            "plan",
            "Says how many sittings and trials a study needs, what they cost, and draws the order of the runs.\n\n"
            + "Example: tarry plan pads --difference-ms 0.5\n"
            + "Example, with sheets: tarry plan pads --half-width-ms 0.2 --order order.csv --sheet order.html --port /dev/ttyACM0")
        {
            study,
        };
        options.AddTo(command);
        foreach (var option in new Option[] { sittings, trials, order, sheet, port, response, seed, json })
        {
            command.Add(option);
        }

        command.SetAction((parsed, cancellation) => Task.Run(
            () =>
            {
                var folder = parsed.GetRequiredValue(study);
                var opened = Study.Open(folder);
                var request = options.Read(parsed);
                var conditions = Conditions(opened, request);
                var (wantedSittings, wantedTrials) = (parsed.GetValue(sittings), parsed.GetValue(trials));
                if (wantedSittings is < 1 or > MostSittings || wantedTrials < 1)
                {
                    throw new UsageException($"--sittings lies from 1 to {MostSittings}, and --trials is 1 or more.", "Leave them out to take what is advised.");
                }

                var findings = StudyAnalysis.Run(opened, parsed.GetValue(seed), ProgramVersion.Text, cancellation);
                var plan = StudyPlanner.Of(findings, conditions, request);
                IReadOnlyList<OrderedSitting> drawn = (wantedSittings ?? plan.Advised?.Sittings) is { } count
                    ? RunOrder.Draw(conditions, count, plan.SittingsDone, parsed.GetValue(seed))
                    : [];
                var runs = new PlannedRuns(folder, parsed.GetRequiredValue(port), parsed.GetRequiredValue(response), wantedTrials ?? plan.Advised?.TrialsPerSession ?? StudyPlanner.FewestTrials);
                var written = OrderFiles.Write(plan, drawn, runs, parsed.GetValue(order), parsed.GetValue(sheet));
                if (parsed.GetValue(json))
                {
                    terminal.Out.Write(PlanJson.Write(plan, drawn));
                }
                else
                {
                    PlanText.Write(plan, terminal);
                    foreach (var file in written)
                    {
                        terminal.Out.WriteLine(file);
                    }
                }

                return ExitCode.Done;
            },
            cancellation));
        return command;
    }

    private static IReadOnlyList<string> Conditions(Study study, PlanRequest request)
    {
        var ids = PlannedConditions.Of(study.File);
        return ids.Count >= PlannedConditions.Needed(request.Kind)
            ? ids
            : throw new UsageException(
                ids.Count == 0 ? "The study has no condition to plan for." : "A difference takes two conditions, and the study has one.",
                "Declare them with 'tarry condition'; the reference counts as one.");
    }
}
