using System.Xml.Linq;
using Tarry.Findings;
using Tarry.Reports.Figures;

namespace Tarry.Reports.Documents;

/// <summary>The figures, each drawn for a page and for a phone; the style sheet shows the one that fits.</summary>
internal static class FiguresSection
{
    /// <summary>The section, or null where there is nothing to draw.</summary>
    /// <param name="document">What is drawn.</param>
    /// <param name="figures">The figures that the report has.</param>
    public static XElement? Build(FindingsDocument document, IReadOnlyList<StudyFigure> figures) => Of(FigurePart.Latencies, document, figures) is { Count: > 0 } drawn
        ? Html.Section("figures", "Figures", drawn)
        : null;

    /// <summary>The figures of one part, drawn.</summary>
    public static IReadOnlyList<XElement> Of(FigurePart part, FindingsDocument document, IReadOnlyList<StudyFigure> figures) =>
        [.. figures.Where(figure => figure.Part == part).Select(figure => Figure(figure, document))];

    private static XElement Figure(StudyFigure figure, FindingsDocument document) => new(
        "figure",
        new XElement("div", new XAttribute("class", "for-page"), figure.Build(document, FigureStyle.Page with { Theme = FigureTheme.Inherited })),
        new XElement("div", new XAttribute("class", "for-phone"), figure.Build(document, FigureStyle.Phone with { Theme = FigureTheme.Inherited })),
        new XElement("figcaption", figure.Caption));
}
