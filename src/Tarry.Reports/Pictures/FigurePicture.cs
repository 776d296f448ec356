using SkiaSharp;
using Svg.Skia;

namespace Tarry.Reports.Pictures;

/// <summary>A figure as a picture: drawn from its SVG without a browser and without any font of the machine.</summary>
public static class FigurePicture
{
    // Flat colours compress well without effort; more of it costs seconds at 3840 pixels.
    private const int CompressionLevel = 1;

    /// <summary>The figure as PNG in several sizes; the same bytes for the same SVG, version of the program and kind of processor.</summary>
    /// <param name="svg">The figure as <see cref="Figures.StandingFigure"/> and its like draw it, in a theme with plain colours.</param>
    /// <param name="transparent">Whether the ground is left clear.</param>
    /// <param name="scales">Pixels of the picture for one of the figure, each above zero.</param>
    /// <returns>A picture a scale, in their order.</returns>
    /// <exception cref="ArgumentException">The text is not an SVG drawing.</exception>
    public static IReadOnlyList<byte[]> Png(string svg, bool transparent, params IReadOnlyList<int> scales)
    {
        ArgumentNullException.ThrowIfNull(scales);
        using var drawing = new SKSvg();
        drawing.Settings.TypefaceProviders!.Clear();
        drawing.Settings.TypefaceProviders.Add(InterFont.Instance);
        var picture = drawing.FromSvg(svg) ?? throw new ArgumentException("Not a figure: the SVG holds nothing to draw.", nameof(svg));
        return [.. scales.Select(scale => Png(picture, transparent, scale))];
    }

    private static byte[] Png(SKPicture picture, bool transparent, int scale)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(scale);
        var size = picture.CullRect.Size;
        var info = new SKImageInfo(
            (int)(size.Width * scale),
            (int)(size.Height * scale),
            SKColorType.Rgba8888,
            transparent ? SKAlphaType.Premul : SKAlphaType.Opaque);
        using var bitmap = new SKBitmap(info);
        using (var canvas = new SKCanvas(bitmap))
        {
            canvas.Clear(transparent ? SKColors.Transparent : SKColors.White);
            canvas.Scale(scale);
            canvas.DrawPicture(picture);
        }

        using var pixels = bitmap.PeekPixels();
        using var png = pixels.Encode(new SKPngEncoderOptions(SKPngEncoderFilterFlags.Sub, CompressionLevel))
            ?? throw new InvalidOperationException($"A picture of {info.Width} x {info.Height} pixels cannot be encoded; draw a smaller one.");
        return png.ToArray();
    }
}
