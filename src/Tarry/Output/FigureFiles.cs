using Tarry.Findings;
using Tarry.Reports.Pictures;
using static System.FormattableString;

namespace Tarry.Output;

/// <summary>Writes every figure as SVG and as PNG for video and print.</summary>
internal static class FigureFiles
{
    /// <summary>Writes them into a folder and returns how many files that made.</summary>
    public static int Write(FindingsDocument document, string folder, CancellationToken cancellation)
    {
        var drawings = FigureSet.Of(document);
        Parallel.ForEach(drawings, new ParallelOptions { CancellationToken = cancellation }, drawing =>
        {
            WholeFile.Write(Path.Combine(folder, $"{drawing.Name}.svg"), writer => writer.Write(drawing.Svg));
            IReadOnlyList<byte[]> pictures = drawing.Png(1, 2);
            WriteBytes("1920x1080", pictures[0]);
            WriteBytes("3840x2160", pictures[1]);

            void WriteBytes(string size, byte[] png) =>
                WholeFile.WriteBytes(Path.Combine(folder, Invariant($"{drawing.Name}-{size}.png")), stream => stream.Write(png));
        });
        return 3 * drawings.Count;
    }
}
