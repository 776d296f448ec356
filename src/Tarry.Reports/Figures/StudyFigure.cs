using System.Xml.Linq;
using Tarry.Findings;

namespace Tarry.Reports.Figures;

/// <summary>A figure that a study can have.</summary>
public sealed class StudyFigure
{
    internal StudyFigure(string name, FigurePart part, string caption, Func<FindingsDocument, FigureStyle, XElement> build) =>
        (Name, Part, Caption, Build) = (name, part, caption, build);

    /// <summary>Its name, such as <c>standing</c>: what its files begin with.</summary>
    public string Name { get; }

    /// <summary>Where in a report it stands.</summary>
    public FigurePart Part { get; }

    /// <summary>What it shows.</summary>
    public string Caption { get; }

    internal Func<FindingsDocument, FigureStyle, XElement> Build { get; }

    /// <summary>The figure as SVG text with real text in it; the same bytes for the same document and style.</summary>
    public string Draw(FindingsDocument document, FigureStyle style) => FigureSvg.Text(document, style, Build);
}
