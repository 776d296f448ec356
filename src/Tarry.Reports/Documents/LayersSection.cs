using System.Xml.Linq;
using Tarry.Findings;
using Tarry.Findings.Comparisons;
using Tarry.Findings.Factors;
using Tarry.Metrology;
using Tarry.Reports.Wording;
using static Tarry.Reports.Wording.Numbers;

namespace Tarry.Reports.Documents;

/// <summary>What layers cost, and what every other factor does that differs alone between conditions.</summary>
public static class LayersSection
{
    private const string Layer = "layer";
    private const string Device = "device";

    /// <summary>The section, or null where no factor differs alone.</summary>
    public static XElement? Build(FindingsDocument document)
    {
        // Which device is sooner is what the rest of the report is about.
        var factors = (document.Factors ?? []).Where(factor => factor.Factor != Device).ToList();
        if (factors.Count == 0)
        {
            return null;
        }

        var layers = factors.Where(factor => factor.Factor == Layer).ToList();
        var others = factors.Where(factor => factor.Factor != Layer).ToList();
        return Html.Section(
            "layers",
            layers.Count > 0 ? "What each layer costs" : "What each factor does",
            Html.Paragraph("Two conditions that differ in one factor alone show what that factor does. A cost is the mean with the level less the mean with the baseline, within sittings: positive where the level makes it slower."),
            layers.SelectMany(Content),
            others.SelectMany(factor => Content(factor).Prepend(Html.Subheading($"By {factor.Factor.Replace('_', ' ')}"))));
    }

    /// <summary>What one factor does: a sentence for each cost, and the table of its contrasts.</summary>
    public static IEnumerable<XElement> Content(FactorFinding factor)
    {
        ArgumentNullException.ThrowIfNull(factor);
        return Elements(factor);
    }

    private static IEnumerable<XElement> Elements(FactorFinding factor)
    {
        yield return Html.List(factor.Costs.Select(FactorWording.Sentence));
        yield return Table(factor);
        yield return Html.Paragraph(FactorWording.Family(factor));
    }

    private static XElement Table(FactorFinding factor)
    {
        var table = new HtmlTable(
            $"Every pair that differs in {factor.Factor.Replace('_', ' ')} alone. Intervals at 95{NoBreakSpace}%.",
            "level",
            "difference, ms",
            "adjusted p",
            "verdict",
            "tells from, ms",
            "it would take");
        foreach (var contrast in factor.Contrasts)
        {
            var pair = contrast.Comparison;
            table.Add(
                new($"{contrast.Level} against {contrast.Baseline}", $"{pair.A} less {pair.B}"),
                [
                    TableCell.Of(pair.Difference, Quantity.Difference),
                    pair.AdjustedP is { } p ? new TableCell(Probability(p)) : new TableCell("not known", "one sitting"),
                    TableCell.Words(VerdictSentence.InBrief(pair)),
                    pair.MinimumDetectable is { } detectable ? new TableCell(Fixed(detectable.Milliseconds, 2)) : new TableCell("not known"),
                    TableCell.Words(pair.Needed is { } needed ? VerdictSentence.Design(needed) : pair.IsRefused ? "sound sittings" : pair.Verdict == Verdict.Undecided ? "further sittings" : "nothing more"),
                ]);
        }

        return table.Element;
    }
}
