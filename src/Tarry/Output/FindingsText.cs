using Spectre.Console;
using Tarry.Findings;
using Tarry.Findings.Budgets;
using Tarry.Findings.Comparisons;
using Tarry.Findings.Conditions;
using Tarry.Findings.Quality;
using Tarry.Metrology;
using Tarry.Reports.Wording;
using static System.FormattableString;

namespace Tarry.Output;

/// <summary>The findings as a table and sentences for a terminal.</summary>
internal static class FindingsText
{
    private static readonly (string Name, bool OnlyWhereWide, Func<RankedCondition?, ConditionFinding, FindingsDocument, string> Cell)[] Columns =
    [
        ("rank", false, (ranked, _, _) => ranked is null ? "-" : ranked.BestRank == ranked.WorstRank ? Invariant($"{ranked.BestRank}") : Invariant($"{ranked.BestRank}-{ranked.WorstRank}")),
        ("condition", false, (_, condition, _) => condition.Id),
        ("mean", false, (_, condition, _) => EstimateText.Of(condition.Mean, latency => latency.Milliseconds)),
        ("less reference", false, (_, condition, _) => condition.Relative is { } relative ? EstimateText.Of(relative, difference => difference.Milliseconds, signed: true) : "is the reference"),
        ("sd", true, (_, condition, _) => EstimateText.Value(condition.StandardDeviation, difference => difference.Milliseconds)),
        ("p5 to p95", true, (_, condition, _) => $"{EstimateText.Value(condition.P05, latency => latency.Milliseconds)} to {EstimateText.Value(condition.P95, latency => latency.Milliseconds)}"),
        ("late %", true, (_, condition, _) => Percent(condition.LateShare)),
        ("sessions", true, (_, condition, _) => Invariant($"{condition.UsedSessions}")),
        ("used", true, (_, condition, _) => Invariant($"{condition.Counts.Used}")),
        ("verdict", false, (_, condition, document) => VerdictAgainstReference(condition, document)),
    ];

    public static void Write(FindingsDocument document, Terminal terminal)
    {
        var counts = document.Counts;
        terminal.Out.WriteLine(document.Title);
        terminal.Out.WriteLine(Invariant(
            $"captured {counts.Captured} = used {counts.Used} + missed {counts.Missed} + early {counts.Early} + refused {counts.Refused} + excluded {counts.Excluded}"));
        foreach (var recording in document.SetAside ?? [])
        {
            terminal.Out.WriteLine($"set aside: {recording.Session}: {recording.Reason}");
        }

        terminal.Out.WriteLine();
        FittedTable.Write(terminal, Table(document, wide: true), Table(document, wide: false));
        terminal.Out.WriteLine();
        terminal.Out.WriteLine(Invariant(
            $"Milliseconds, 95 % intervals; the session is the unit. Rank: the ranks that the data allow. Margin {Numbers.Plain(document.MarginMs)} ms; {(document.Reference is { } reference ? $"a verdict is against {reference}" : "the study names no reference")}."));
        WriteAbsolute(document, terminal);
        DeviceText.Write(document, terminal);
        FactorsText.WriteLayers(document, terminal);
        foreach (var caution in document.Conditions.SelectMany(condition => condition.Cautions).Concat(document.Cautions))
        {
            terminal.Out.WriteLine($"caution ({CautionWording.Key(caution.Kind)}): {CautionWording.Sentence(caution)}");
        }
    }

    private static void WriteAbsolute(FindingsDocument document, Terminal terminal)
    {
        var means = document.Conditions.Select(condition => condition.Budget?.Mean).OfType<AbsoluteLatency>().ToList();
        if (means.Count > 0)
        {
            var calibrated = document.Conditions.All(condition => condition.Budget?.Calibrated != false);
            terminal.Out.WriteLine(Invariant(
                $"In absolute terms means are known to {means.Min(mean => mean.Stated.Uncertainty.Expanded):0.000} to {means.Max(mean => mean.Stated.Uncertainty.Expanded):0.000} ms (95 %), the rig's own delays and clock in them{(calibrated ? "" : "; where the rig was not calibrated, by the limits of its class")}. Differences within a sitting lose what both sides share."));
        }
    }

    private static Table Table(FindingsDocument document, bool wide)
    {
        var columns = Columns.Where(column => wide || !column.OnlyWhereWide).ToList();
        var table = FittedTable.New(columns.Select(column => column.Name));
        var conditions = document.Conditions.ToDictionary(condition => condition.Id);
        foreach (var ranked in document.Ranking)
        {
            table.AddRow(FittedTable.Cells(columns.Select(column => column.Cell(ranked, conditions[ranked.Id], document))));
        }

        foreach (var condition in document.Conditions.ExceptBy(document.Ranking.Select(ranked => ranked.Id), condition => condition.Id))
        {
            table.AddRow(FittedTable.Cells(columns.Select(column => column.Cell(null, condition, document))));
        }

        return table;
    }

    private static string VerdictAgainstReference(ConditionFinding condition, FindingsDocument document)
    {
        var pair = document.Reference is { } reference ? ComparisonView.Find(document, condition.Id, reference) : null;
        return pair is null ? "" : pair.IsRefused ? VerdictSentence.InBrief(pair) : VerdictWording.Key(pair.Verdict);
    }

    private static string Percent(EstimateOutcome<Proportion> outcome) =>
        outcome is Estimate<Proportion> estimate ? Invariant($"{estimate.Value.Value * 100:0.00}") : "?";
}
