using Tarry.Reports.Figures;

namespace Tarry.Reports.Pictures;

/// <summary>One figure in one theme, drawn for a video frame or a slide: as SVG with real text, and as PNG in any multiple of 1920 x 1080.</summary>
/// <param name="Name">Figure and theme, such as <c>standing-light</c>: the stem of its file names.</param>
/// <param name="Svg">The drawing.</param>
/// <param name="Theme">Its colours.</param>
public sealed record FigureDrawing(string Name, string Svg, FigureTheme Theme)
{
    /// <summary>Whether the ground is left clear.</summary>
    public bool IsTransparent => Theme is FigureTheme.LightTransparent or FigureTheme.DarkTransparent;

    /// <summary>The drawing as PNG of 1920 x 1080 pixels times each scale.</summary>
    public IReadOnlyList<byte[]> Png(params IReadOnlyList<int> scales) => FigurePicture.Png(Svg, IsTransparent, scales);
}
