using System.Xml.Linq;
using Tarry.Findings;
using Tarry.Findings.Conditions;
using Tarry.Metrology;
using Tarry.Reports.Figures;
using Tarry.Reports.Wording;

namespace Tarry.Reports.Documents;

/// <summary>The tables of every estimate of every condition, in ranked order.</summary>
internal static class ResultsSection
{
    private const string Note = "Intervals at 95\u00A0% stand beneath the values; another level is named where it is used.";

    /// <summary>The section.</summary>
    public static XElement Build(FindingsDocument document)
    {
        IReadOnlyList<RankedRow> rows = RankedRow.Of(document);
        return Html.Section("results", "Results", Soon(document, rows), Steady(rows), Factors(document));
    }

    private static XElement Soon(FindingsDocument document, IReadOnlyList<RankedRow> rows)
    {
        var table = document.Reference is null
            ? new HtmlTable($"How soon. {Note}", "condition", "rank", "mean, ms", "median, ms", "p5, ms", "p95, ms", "p99, ms")
            : new HtmlTable($"How soon. {Note}", "condition", "rank", "mean, ms", "mean less reference, ms", "median, ms", "p5, ms", "p95, ms", "p99, ms");
        foreach (var row in rows)
        {
            var condition = row.Condition;
            List<TableCell> cells = [new(row.RankRange.Length == 0 ? "none" : row.RankRange), Mean(condition)];
            if (document.Reference is not null)
            {
                cells.Add(Relative(condition));
            }

            cells.AddRange(new[] { condition.Median, condition.P05, condition.P95, condition.P99 }.Select(quantile => TableCell.Of(quantile, Quantity.Latency)));
            table.Add(Head(row), cells);
        }

        return table.Element;
    }

    private static XElement Steady(IReadOnlyList<RankedRow> rows)
    {
        var table = new HtmlTable($"How steady, and how complete. {Note}", "condition", "standard deviation, ms", "spread (p95 less p5), ms", "late share, %", "late is later than", "missed share, %");
        foreach (var row in rows)
        {
            var condition = row.Condition;
            table.Add(
                Head(row),
                [
                    TableCell.Of(condition.StandardDeviation, Quantity.Scatter),
                    TableCell.Of(condition.Spread, Quantity.Scatter),
                    TableCell.Of(condition.LateShare, Quantity.Share),
                    condition.LateBeyond is { } beyond ? TableCell.Words(Numbers.Milliseconds(beyond.Threshold.Milliseconds), beyond.Definition) : TableCell.Words("not known"),
                    TableCell.Of(condition.MissedShare, Quantity.Share),
                ]);
        }

        return table.Element;
    }

    private static XElement? Factors(FindingsDocument document)
    {
        var names = document.Conditions.SelectMany(condition => condition.Factors.Keys).Distinct().ToList();
        if (names.Count == 0)
        {
            return null;
        }

        var table = new HtmlTable("What was tested: the level of every factor.", ["condition", .. names.Select(name => PlainText.Clean(name).Replace('_', ' ')), "stated report rate"]);
        foreach (var condition in document.Conditions)
        {
            IEnumerable<TableCell> levels = names.Select(name => TableCell.Words(condition.Factors.GetValueOrDefault(name, "not stated")));
            var rate = condition.NominalReportHz is { } hertz ? $"{Numbers.Plain(hertz)}{Numbers.NoBreakSpace}Hz" : "not stated";
            table.Add(new(condition.Id, condition.IsReference ? "reference" : ""), [.. levels, TableCell.Words(rate)]);
        }

        return table.Element;
    }

    private static TableCell Head(RankedRow row) =>
        new(row.Condition.Id, row.Condition.IsReference ? $"reference; {row.Basis}" : row.Basis);

    private static TableCell Mean(ConditionFinding condition)
    {
        var cell = TableCell.Of(condition.Mean, Quantity.Latency);
        return condition.Mean is Estimate<Latency> { Sessions: 1 } ? cell with { Detail = $"{cell.Detail}; one sitting" } : cell;
    }

    private static TableCell Relative(ConditionFinding condition) => condition switch
    {
        { IsReference: true } => new TableCell("reference"),
        { Relative: { } relative } => TableCell.Of(relative, Quantity.Difference),
        _ => new TableCell("not known"),
    };
}
