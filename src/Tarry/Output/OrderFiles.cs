using Tarry.Findings.Plans;
using Tarry.Reports.Documents;
using Tarry.Reports.Publishing;

namespace Tarry.Output;

/// <summary>Writes the order of the runs as a table and as a sheet to print.</summary>
internal static class OrderFiles
{
    /// <summary>Writes those that have a path, and returns the paths.</summary>
    public static IReadOnlyList<string> Write(StudyPlan plan, IReadOnlyList<OrderedSitting> order, PlannedRuns runs, string? table, string? sheet)
    {
        if (order.Count == 0 && (table ?? sheet) is not null)
        {
            throw new UsageException("No number of sittings reaches the goal, so there is no order to write.", "Give --sittings to draw one all the same, or an easier goal.");
        }

        var written = new List<string>();
        if (table is not null)
        {
            written.Add(WholeFile.Write(table, writer => OrderTable.Write(writer, plan, order, runs)));
        }

        if (sheet is not null)
        {
            written.Add(WholeFile.Write(sheet, writer => writer.Write(OrderSheet.Write(plan, order, runs))));
        }

        return written;
    }
}
