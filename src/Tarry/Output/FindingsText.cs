using Spectre.Console;
using Spectre.Console.Rendering;
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
        ("mean", false, (_, condition, _) => Cell(condition.Mean, latency => latency.Milliseconds)),
        ("less reference", false, (_, condition, _) => condition.Relative is { } relative ? Cell(relative, difference => difference.Milliseconds) : "is the reference"),
        ("sd", true, (_, condition, _) => Value(condition.StandardDeviation, difference => difference.Milliseconds)),
        ("p5 to p95", true, (_, condition, _) => $"{Value(condition.P05, latency => latency.Milliseconds)} to {Value(condition.P95, latency => latency.Milliseconds)}"),
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
        terminal.Out.WriteLine();
        WriteTable(document, terminal);
        terminal.Out.WriteLine();
        terminal.Out.WriteLine(Invariant(
            $"Milliseconds, 95 % intervals; the session is the unit. Rank: the ranks that the data allow. Margin {Numbers.Plain(document.MarginMs)} ms; {(document.Reference is { } reference ? $"a verdict is against {reference}" : "the study names no reference")}."));
        WriteAbsolute(document, terminal);
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

    private static void WriteTable(FindingsDocument document, Terminal terminal)
    {
        var console = terminal.Tables();
        var table = Table(document, wide: true);
        if (WidthOf(table, console) > console.Profile.Width)
        {
            table = Table(document, wide: false);
        }

        // A terminal that is narrower still breaks the line, which is better than a number broken in two.
        console.Profile.Width = Math.Max(console.Profile.Width, WidthOf(table, console));
        console.Write(table);
    }

    private static int WidthOf(IRenderable table, IAnsiConsole console) =>
        table.Measure(RenderOptions.Create(console), int.MaxValue).Max;

    private static Table Table(FindingsDocument document, bool wide)
    {
        var columns = Columns.Where(column => wide || !column.OnlyWhereWide).ToList();
        var table = new Table { Border = TableBorder.Simple, UseSafeBorder = true };
        columns.ForEach(column => table.AddColumn(new TableColumn(column.Name).NoWrap()));
        var conditions = document.Conditions.ToDictionary(condition => condition.Id);
        foreach (var ranked in document.Ranking)
        {
            table.AddRow(columns.Select(column => new Text(column.Cell(ranked, conditions[ranked.Id], document))));
        }

        foreach (var condition in document.Conditions.ExceptBy(document.Ranking.Select(ranked => ranked.Id), condition => condition.Id))
        {
            table.AddRow(columns.Select(column => new Text(column.Cell(null, condition, document))));
        }

        return table;
    }

    private static string VerdictAgainstReference(ConditionFinding condition, FindingsDocument document)
    {
        var pair = document.Reference is { } reference ? ComparisonView.Find(document, condition.Id, reference) : null;
        return pair is null ? "" : pair.IsRefused ? VerdictSentence.InBrief(pair) : VerdictWording.Key(pair.Verdict);
    }

    private static string Cell<T>(EstimateOutcome<T> outcome, Func<T, double> number)
        where T : struct, IComparable<T> => outcome switch
        {
            Estimate<T> estimate => WithInterval(number(estimate.Value), number(estimate.Interval.Low), number(estimate.Interval.High), signed: typeof(T) == typeof(LatencyDifference)),
            NotEnough<T> not => Invariant($"{not.Have} of {not.Need} {not.Of}"),
            _ => "",
        };

    private static string WithInterval(double value, double low, double high, bool signed)
    {
        var decimals = Numbers.Decimals(high - low);
        return $"{Numbers.Fixed(value, decimals, signed)} ({Numbers.Fixed(low, decimals, signed)} to {Numbers.Fixed(high, decimals, signed)})";
    }

    private static string Value<T>(EstimateOutcome<T> outcome, Func<T, double> number)
        where T : struct, IComparable<T> =>
        outcome is Estimate<T> estimate
            ? Numbers.Fixed(number(estimate.Value), Numbers.Decimals(number(estimate.Interval.High) - number(estimate.Interval.Low)))
            : "?";

    private static string Percent(EstimateOutcome<Proportion> outcome) =>
        outcome is Estimate<Proportion> estimate ? Invariant($"{estimate.Value.Value * 100:0.00}") : "?";
}
