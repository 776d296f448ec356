using Spectre.Console;
using Tarry.Findings.Plans;
using Tarry.Reports.Wording;
using static System.FormattableString;

namespace Tarry.Output;

/// <summary>A plan as a table and sentences for a terminal.</summary>
internal static class PlanText
{
    public static void Write(StudyPlan plan, Terminal terminal)
    {
        terminal.Out.WriteLine(plan.Title);
        terminal.Out.WriteLine(PlanWording.Goal(plan));
        terminal.Out.WriteLine(PlanWording.Scatter(plan));
        terminal.Out.WriteLine();
        WriteTable(plan, terminal);
        terminal.Out.WriteLine();
        terminal.Out.WriteLine(PlanWording.Advice(plan));
        terminal.Out.WriteLine($"{PlanWording.Costs(plan)} {PlanWording.Economy(plan)}");
        if (PlanWording.Done(plan) is { } done)
        {
            terminal.Out.WriteLine(done);
        }
    }

    private static void WriteTable(StudyPlan plan, Terminal terminal)
    {
        var table = new Table { Border = TableBorder.Simple, UseSafeBorder = true };
        foreach (var head in new[] { "", "sittings", "trials a session", "presses in all", "bench hours", "with endless presses, ms" })
        {
            table.AddColumn(new TableColumn(head).NoWrap());
        }

        foreach (var one in plan.Alternatives)
        {
            table.AddRow(
                one == plan.Advised ? "advised" : "",
                Invariant($"{one.Sittings}"),
                one.TrialsPerSession is { } trials ? Invariant($"{trials}") : "more presses cannot help; add sittings",
                one.Presses is { } presses ? Invariant($"{presses}") : "-",
                one.Hours is { } hours ? Invariant($"{hours:0.0}") : "-",
                Invariant($"{one.EndlessPressesMs:0.000}"));
        }

        terminal.Tables().Write(table);
    }
}
