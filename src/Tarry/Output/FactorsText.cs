using Spectre.Console;
using Tarry.Findings;
using Tarry.Findings.Comparisons;
using Tarry.Findings.Factors;
using Tarry.Metrology;
using Tarry.Reports.Wording;
using static System.FormattableString;

namespace Tarry.Output;

/// <summary>What factors do, as tables for a terminal.</summary>
internal static class FactorsText
{
    /// <summary>What each layer costs, or nothing where no layer is measured against its baseline.</summary>
    public static void WriteLayers(FindingsDocument document, Terminal terminal)
    {
        if (document.Factors?.FirstOrDefault(factor => factor.Factor == "layer") is { Costs.Count: > 0 } layers)
        {
            WriteCosts(layers, "What each layer costs (ms, 95 % intervals)", terminal);
        }
    }

    /// <summary>All of one factor: each contrast, and what its levels cost over all settings.</summary>
    public static void Write(FactorFinding factor, Terminal terminal)
    {
        var table = NewTable("level", "against", "conditions", "difference", "p", "verdict", "tells from", "it would take");
        foreach (var contrast in factor.Contrasts)
        {
            var comparison = contrast.Comparison;
            table.AddRow(Texts(
                contrast.Level,
                contrast.Baseline,
                $"{comparison.A} - {comparison.B}",
                Difference(comparison.Difference),
                comparison.AdjustedP is { } p ? Numbers.Probability(p) : "-",
                VerdictSentence.InBrief(comparison),
                comparison.MinimumDetectable is { } detectable ? Invariant($"{detectable.Milliseconds:0.00}") : "-",
                Takes(comparison.Needed)));
        }

        terminal.Out.WriteLine($"Pairs that differ in {factor.Factor} alone (ms, 95 % intervals)");
        Print(table, terminal);
        WriteCosts(factor, $"What each level of {factor.Factor} costs", terminal);
        terminal.Out.WriteLine(FactorWording.Family(factor));
    }

    private static void WriteCosts(FactorFinding factor, string title, Terminal terminal)
    {
        var table = NewTable(factor.Factor, "against", "cost", "measured on", "verdict", "it would take");
        foreach (var cost in factor.Costs)
        {
            table.AddRow(Texts(
                cost.Level,
                cost.Baseline,
                Difference(cost.Cost),
                FactorWording.Settings(cost),
                FactorWording.Verdict(cost),
                Takes(cost.Needed)));
        }

        terminal.Out.WriteLine(title);
        Print(table, terminal);
    }

    private static Table NewTable(params string[] heads)
    {
        var table = new Table { Border = TableBorder.Simple, UseSafeBorder = true };
        Array.ForEach(heads, head => table.AddColumn(new TableColumn(head).NoWrap()));
        return table;
    }

    private static IEnumerable<Text> Texts(params string[] cells) => cells.Select(cell => new Text(cell.Replace('\u00A0', ' ')));

    private static void Print(Table table, Terminal terminal)
    {
        var console = terminal.Tables();
        var width = ((Spectre.Console.Rendering.IRenderable)table).Measure(Spectre.Console.Rendering.RenderOptions.Create(console), int.MaxValue).Max;
        console.Profile.Width = Math.Max(console.Profile.Width, width);
        console.Write(table);
    }

    private static string Difference(EstimateOutcome<LatencyDifference> outcome)
    {
        if (outcome is not Estimate<LatencyDifference> estimate)
        {
            var lack = (NotEnough<LatencyDifference>)outcome;
            return Invariant($"{lack.Have} of {lack.Need} {lack.Of}");
        }

        var decimals = Numbers.Decimals(estimate.Interval.High.Milliseconds - estimate.Interval.Low.Milliseconds);
        string In(LatencyDifference value) => Numbers.Fixed(value.Milliseconds, decimals, withPlus: true);
        return $"{In(estimate.Value)} ({In(estimate.Interval.Low)} to {In(estimate.Interval.High)})";
    }

    private static string Takes(Needed? needed) =>
        needed is { } design ? Invariant($"{design.Sittings} sittings x {design.TrialsPerSession} trials") : "";
}
