using Microsoft.AspNetCore.Components;
using Tarry.Findings;
using Tarry.Findings.Conditions;
using Tarry.Reports.Figures;

namespace Tarry.Web.Parts;

/// <summary>One of the report's figures in a page, of all conditions or of one.</summary>
public sealed partial class Figure
{
    /// <summary>How it is drawn.</summary>
    [Parameter]
    [EditorRequired]
    public required Func<FindingsDocument, FigureStyle, string> Draw { get; set; }

    /// <summary>Of what.</summary>
    [Parameter]
    [EditorRequired]
    public required FindingsDocument Document { get; set; }

    /// <summary>Of which condition alone; null for all.</summary>
    [Parameter]
    public ConditionFinding? Condition { get; set; }

    /// <summary>What it shows.</summary>
    [Parameter]
    [EditorRequired]
    public required string Caption { get; set; }

    private MarkupString Drawn(FigureStyle style) => (MarkupString)DrawnFigures.Of(
        Condition ?? (object)Document,
        Draw.Method,
        style.Name,
        () => Draw(Condition is null ? Document : Document with { Conditions = [Condition] }, Named(style)));

    // The ids inside a figure begin with the style's name, and must differ between the figures of a page.
    private FigureStyle Named(FigureStyle style) =>
        style with { Name = $"{style.Name}-{Draw.Method.DeclaringType?.Name}", Theme = FigureTheme.Inherited };
}
