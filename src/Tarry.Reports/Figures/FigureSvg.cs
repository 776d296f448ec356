using System.Xml.Linq;
using Tarry.Findings;

namespace Tarry.Reports.Figures;

/// <summary>What a figure builds, as SVG text.</summary>
internal static class FigureSvg
{
    /// <summary>The text; the same bytes for the same document and style.</summary>
    public static string Text(FindingsDocument document, FigureStyle style, Func<FindingsDocument, FigureStyle, XElement> build)
    {
        ArgumentNullException.ThrowIfNull(document);
        ArgumentNullException.ThrowIfNull(style);
        return build(document, style).ToString(SaveOptions.DisableFormatting);
    }
}
