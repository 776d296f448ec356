using System.Xml.Linq;
using Tarry.Findings;
using Tarry.Reports.Figures;

namespace Tarry.Reports.Documents;

/// <summary>The figures, each drawn for a page and for a phone; the style sheet shows the one that fits.</summary>
internal static class FiguresSection
{
    /// <summary>The section, or null where there is nothing to draw.</summary>
    public static XElement? Build(FindingsDocument document) => document.Conditions.Count == 0
        ? null
        : Html.Section("figures", "Figures", StudyFigures.Of(document).Where(figure => figure.Part == FigurePart.Latencies).Select(figure => Figure(figure, document)));

    /// <summary>One figure for a page and for a phone.</summary>
    public static XElement Figure(StudyFigure figure, FindingsDocument document) => new(
        "figure",
        new XElement("div", new XAttribute("class", "for-page"), figure.Build(document, FigureStyle.Page with { Theme = FigureTheme.Inherited })),
        new XElement("div", new XAttribute("class", "for-phone"), figure.Build(document, FigureStyle.Phone with { Theme = FigureTheme.Inherited })),
        new XElement("figcaption", figure.Caption));
}
