using System.Xml.Linq;
using Tarry.Findings;

namespace Tarry.Reports.Figures;

/// <summary>A figure that a study can have.</summary>
public sealed class StudyFigure
{
    internal StudyFigure(string name, FigurePart part, string caption, Func<FindingsDocument, FigureStyle, XElement> build, Func<FindingsDocument, FigureStyle, string> draw) =>
        (Name, Part, Caption, Build, Draw) = (name, part, caption, build, draw);

    /// <summary>Its name, such as <c>standing</c>: what its files begin with.</summary>
    public string Name { get; }

    /// <summary>Where in a report it stands.</summary>
    public FigurePart Part { get; }

    /// <summary>What it shows.</summary>
    public string Caption { get; }

    /// <summary>Draws it as SVG.</summary>
    public Func<FindingsDocument, FigureStyle, string> Draw { get; }

    internal Func<FindingsDocument, FigureStyle, XElement> Build { get; }
}
