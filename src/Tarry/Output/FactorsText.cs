using Spectre.Console;
using Tarry.Findings;
using Tarry.Findings.Comparisons;
using Tarry.Findings.Factors;
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
        var table = FittedTable.New("level", "against", "conditions", "difference", "p", "verdict", "tells from", "it would take");
        foreach (var contrast in factor.Contrasts)
        {
            var comparison = contrast.Comparison;
            table.AddRow(FittedTable.Cells(
                contrast.Level,
                contrast.Baseline,
                $"{comparison.A} - {comparison.B}",
                EstimateText.Of(comparison.Difference, difference => difference.Milliseconds, signed: true),
                comparison.AdjustedP is { } p ? Numbers.Probability(p) : "-",
                VerdictSentence.InBrief(comparison),
                comparison.MinimumDetectable is { } detectable ? Invariant($"{detectable.Milliseconds:0.00}") : "-",
                Takes(comparison.Needed)));
        }

        terminal.Out.WriteLine($"Pairs that differ in {factor.Factor} alone (ms, 95 % intervals)");
        FittedTable.Write(terminal, table);
        WriteCosts(factor, $"What each level of {factor.Factor} costs", terminal);
        terminal.Out.WriteLine(FactorWording.Family(factor));
    }

    private static void WriteCosts(FactorFinding factor, string title, Terminal terminal)
    {
        var table = FittedTable.New(factor.Factor, "against", "cost", "measured on", "verdict", "it would take");
        foreach (var cost in factor.Costs)
        {
            table.AddRow(FittedTable.Cells(
                cost.Level,
                cost.Baseline,
                EstimateText.Of(cost.Cost, difference => difference.Milliseconds, signed: true),
                FactorWording.Settings(cost),
                FactorWording.Verdict(cost),
                Takes(cost.Needed)));
        }

        terminal.Out.WriteLine(title);
        FittedTable.Write(terminal, table);
    }

    private static string Takes(Needed? needed) =>
        needed is { } design ? Invariant($"{design.Sittings} sittings x {design.TrialsPerSession} trials") : "";
}
