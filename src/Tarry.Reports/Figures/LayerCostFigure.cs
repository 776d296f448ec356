using System.Xml.Linq;
using Tarry.Findings;

namespace Tarry.Reports.Figures;

/// <summary>What each layer costs: intervals of the costs over the band of the margin, a row a layer and below it one a device.</summary>
public static class LayerCostFigure
{
    /// <summary>Whether the study has a layer to draw.</summary>
    public static bool IsWorthDrawing(FindingsDocument document)
    {
        ArgumentNullException.ThrowIfNull(document);
        return MarginRow.OfLayers(document).Count > 0;
    }

    /// <summary>The figure as SVG text with real text in it; the same bytes for the same document and style.</summary>
    public static string Draw(FindingsDocument document, FigureStyle style) => FigureSvg.Text(document, style, Build);

    internal static XElement Build(FindingsDocument document, FigureStyle style) => MarginFigure.Build(document, style, MarginRow.OfLayers(document), new(
        "layer-cost",
        $"What each layer costs: {document.Title}",
        $"{document.Title}: what each layer costs",
        "What each layer costs.",
        "layer",
        "cost and interval, ms",
        "latency with the layer less without, ms",
        "right of zero the layer makes it slower"));
}
