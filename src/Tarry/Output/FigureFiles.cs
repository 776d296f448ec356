using Tarry.Findings;
using Tarry.Reports.Pictures;
using static System.FormattableString;

namespace Tarry.Output;

/// <summary>Writes every figure as SVG and as PNG for video and print.</summary>
internal static class FigureFiles
{
    private static readonly (int Scale, string Size)[] Sizes = [(1, "1920x1080"), (2, "3840x2160")];

    /// <summary>Writes them into a folder and returns how many files that made.</summary>
    public static int Write(FindingsDocument document, string folder, CancellationToken cancellation)
    {
        var drawings = FigureSet.Of(document);
        // The large ones first, so that no core is left waiting for one at the end.
        var pictures = Sizes.Reverse().SelectMany(size => drawings.Select(drawing => (drawing, size))).ToList();
        Parallel.ForEach(pictures, new ParallelOptions { CancellationToken = cancellation }, picture => WholeFile.WriteBytes(
            Path.Combine(folder, Invariant($"{picture.drawing.Name}-{picture.size.Size}.png")),
            stream => stream.Write(picture.drawing.Png(picture.size.Scale))));
        foreach (var drawing in drawings)
        {
            WholeFile.Write(Path.Combine(folder, $"{drawing.Name}.svg"), writer => writer.Write(drawing.Svg));
        }

        return pictures.Count + drawings.Count;
    }
}
