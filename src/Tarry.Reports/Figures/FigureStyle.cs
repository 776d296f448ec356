namespace Tarry.Reports.Figures;

/// <summary>For what a figure is drawn: its size, its text and its colours. The layout follows from width and text size.</summary>
/// <param name="Name">Begins the ids inside the figure; unique among drawings of one figure in one page.</param>
/// <param name="Width">Width in pixels.</param>
/// <param name="Height">Height in pixels, or null to let the rows decide.</param>
/// <param name="TextSize">Size of the text in pixels; shrinks where a fixed height leaves too little room.</param>
/// <param name="Theme">The colours.</param>
public sealed record FigureStyle(string Name, int Width, int? Height, double TextSize, FigureTheme Theme)
{
    private const double NarrowBelowEm = 45;

    /// <summary>For a page of 700 pixels and more.</summary>
    public static FigureStyle Page { get; } = new("page", 960, null, 13, FigureTheme.Automatic);

    /// <summary>For a phone held upright.</summary>
    public static FigureStyle Phone { get; } = new("phone", 344, null, 13, FigureTheme.Automatic);

    /// <summary>For a video frame or a slide.</summary>
    public static FigureStyle Video { get; } = new("video", 1920, 1080, 28, FigureTheme.Light);

    /// <summary>Whether a row's label goes above its marks instead of beside them.</summary>
    internal bool IsNarrow => Width / TextSize < NarrowBelowEm;

    /// <summary>The style with text that lets a figure of so many em fit a fixed height.</summary>
    internal FigureStyle Fitted(double heightEm) =>
        Height is { } height ? this with { TextSize = Math.Min(TextSize, height / heightEm) } : this;
}
