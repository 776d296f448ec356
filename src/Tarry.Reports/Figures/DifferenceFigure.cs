using System.Xml.Linq;
using Tarry.Findings;
using Tarry.Findings.Comparisons;
using Tarry.Reports.Wording;

namespace Tarry.Reports.Figures;

/// <summary>The pairs of a document as intervals of their differences over the band of the margin, a row a pair, in the document's order.</summary>
public static class DifferenceFigure
{
    /// <summary>The figure as SVG text with real text in it; the same bytes for the same document and style.</summary>
    public static string Draw(FindingsDocument document, FigureStyle style) => FigureSvg.Text(document, style, Build);

    internal static XElement Build(FindingsDocument document, FigureStyle style)
    {
        // Where all are against the same one its name need not stand in every row.
        var against = document.Comparisons.Select(pair => pair.B).Distinct(StringComparer.Ordinal).ToList();
        var isOne = against.Count == 1;
        IReadOnlyList<MarginRow> rows = [.. document.Comparisons.Select(pair => new MarginRow(
            isOne ? pair.A : $"{pair.A} against {pair.B}",
            IsPart: false,
            pair.Difference,
            VerdictSentence.InBrief(pair),
            pair.Verdict == Verdict.Undecided))];
        var name = isOne ? $"Less {against[0]}" : "Differences of means";
        return MarginFigure.Build(document, style, rows, new(
            "difference",
            isOne && rows.Count == 1 ? $"{rows[0].Name} less {against[0]}" : $"{name}: {document.Title}",
            $"{document.Title}: differences of means",
            "Differences of means.",
            "condition",
            "difference and interval, ms",
            isOne ? "mean less that of the other, ms" : "first mean less second, ms",
            isOne ? $"right of zero is slower than {against[0]}" : "right of zero the first is slower"));
    }
}
