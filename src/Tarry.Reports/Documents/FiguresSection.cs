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
        : Html.Section(
            "figures",
            "Figures",
            Figure(StandingFigure.Build, document, "The standing: conditions from soonest to latest mean. The numbers are in the table of results."),
            Figure(RidgeFigure.Build, document, "Where the latencies of each condition fall, and how far the latest reach."),
            Figure(LadderFigure.Build, document, "The ladder of quantiles: how late the middle, the later quarter and the latest trials of each condition are."),
            Figure(SessionsFigure.Build, document, "The sessions: how well the sittings of each condition agree."),
            LayerCostFigure.IsWorthDrawing(document) ? Figure(LayerCostFigure.Build, document, "What each layer costs, against the margin. The numbers are in the table of layers.") : null,
            FoldFigure.IsWorthDrawing(document)
                ? Figure(FoldFigure.Build, document, "The fold: how latency depends on when in the report interval the press came.")
                : null,
            DeviceOnlyFigure.IsWorthDrawing(document)
                ? Figure(DeviceOnlyFigure.Build, document, "The device alone: what is left of each condition's latencies when the chain, as the reference measured it, is taken out.")
                : null,
            RunChartFigure.IsWorthDrawing(document)
                ? Figure(RunChartFigure.Build, document, "The run chart: latencies in the order of trials, so that warming up, a change or a disturbed sitting is seen.")
                : null,
            document.Play is null ? null : Figure(PlayCurveFigure.Build, document, "The play curve: how often a press hits a timing window once the constant part of the delay is learned."));

    /// <summary>A figure for a page and for a phone.</summary>
    public static XElement Figure(Func<FindingsDocument, FigureStyle, XElement> build, FindingsDocument document, string caption) => new(
        "figure",
        new XElement("div", new XAttribute("class", "for-page"), build(document, FigureStyle.Page with { Theme = FigureTheme.Inherited })),
        new XElement("div", new XAttribute("class", "for-phone"), build(document, FigureStyle.Phone with { Theme = FigureTheme.Inherited })),
        new XElement("figcaption", caption));
}
