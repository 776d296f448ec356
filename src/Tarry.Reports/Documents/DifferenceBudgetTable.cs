using System.Xml.Linq;
using Tarry.Findings.Comparisons;
using Tarry.Metrology;
using Tarry.Reports.Wording;
using static Tarry.Reports.Wording.Numbers;

namespace Tarry.Reports.Documents;

/// <summary>What the uncertainty of one difference is made of, and what cancels in it.</summary>
public static class DifferenceBudgetTable
{
    /// <summary>The table with its sentence; null where there is no difference.</summary>
    public static XElement? Build(ComparisonFinding comparison)
    {
        ArgumentNullException.ThrowIfNull(comparison);
        if (comparison is not { Budget: { } budget, Difference: Estimate<LatencyDifference> difference })
        {
            return null;
        }

        var table = new HtmlTable("What each source adds to the standard uncertainty of the difference.", "source", "adds, µs", "in the difference");
        foreach (var part in budget.Contributions)
        {
            table.Add(BudgetSection.Name(part.Source), [BudgetSection.Small(part.Milliseconds * 1000), TableCell.Words(part.Cancels ? "cancels: one and the same error on both sides" : "stays")]);
        }

        var uncertainty = budget.Uncertainty;
        var corrected = difference.Value.Milliseconds + budget.Correction.Milliseconds;
        var decimals = Decimals(2 * uncertainty.Expanded);
        return new XElement(
            "div",
            Html.Paragraph($"Corrected for the rig's own delays and with the rig's uncertainty in it: {Fixed(corrected, decimals, withPlus: true)}{NoBreakSpace}ms, {Level(uncertainty.Level)} interval {Fixed(corrected - uncertainty.Expanded, decimals, withPlus: true)} to {Fixed(corrected + uncertainty.Expanded, decimals, withPlus: true)}{NoBreakSpace}ms (coverage factor {Fixed(uncertainty.CoverageFactor, 2)}; law of propagation, JCGM 100:2008, 5.1.2 and G.4.1)."),
            table.Element);
    }
}
