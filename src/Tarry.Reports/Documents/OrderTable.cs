using Tarry.Findings.Plans;

namespace Tarry.Reports.Documents;

/// <summary>The order of all runs as CSV (RFC 4180): a row a run.</summary>
public static class OrderTable
{
    /// <summary>Writes it.</summary>
    public static void Write(TextWriter writer, StudyPlan plan, IReadOnlyList<OrderedSitting> order, PlannedRuns runs)
    {
        ArgumentNullException.ThrowIfNull(writer);
        ArgumentNullException.ThrowIfNull(plan);
        ArgumentNullException.ThrowIfNull(order);
        ArgumentNullException.ThrowIfNull(runs);
        writer.Write("sitting,step,condition,is_reference,trials,seed,command\r\n");
        foreach (var sitting in order)
        {
            foreach (var run in sitting.Runs)
            {
                writer.Write(FormattableString.Invariant(
                    $"{sitting.Sitting},{run.Step},{run.Condition},{(run.Condition == plan.Reference ? "true" : "false")},{runs.Trials},{run.Seed},{Cell(runs.Command(sitting, run))}\r\n"));
            }
        }
    }

    private static string Cell(string text) =>
        text.IndexOfAny(['"', ',', '\r', '\n']) < 0 ? text : $"\"{text.Replace("\"", "\"\"", StringComparison.Ordinal)}\"";
}
