using Tarry.Findings;
using Tarry.Reports.Pictures;
using static System.FormattableString;

namespace Tarry.Reports.Publishing;

/// <summary>Writes figures as SVG and as PNG for video and print, light, dark and on a clear ground.</summary>
public static class FigureFiles
{
    /// <summary>Writes them into a folder.</summary>
    /// <param name="document">What is drawn.</param>
    /// <param name="folder">Where to; it is made if it is not there.</param>
    /// <param name="names">Which figures, by name; null for all.</param>
    /// <param name="progress">Told how many of the drawings are written, and of how many.</param>
    /// <param name="cancellation">Stops between two drawings; what is written is whole.</param>
    /// <returns>How many files that made.</returns>
    public static int Write(
        FindingsDocument document,
        string folder,
        IReadOnlyCollection<string>? names = null,
        IProgress<(int Done, int Total)>? progress = null,
        CancellationToken cancellation = default)
    {
        var drawings = FigureSet.Of(document, names);
        var done = 0;
        Parallel.ForEach(drawings, new ParallelOptions { CancellationToken = cancellation }, drawing =>
        {
            WholeFile.Write(Path.Combine(folder, $"{drawing.Name}.svg"), writer => writer.Write(drawing.Svg));
            IReadOnlyList<byte[]> pictures = drawing.Png(1, 2);
            WriteBytes("1920x1080", pictures[0]);
            WriteBytes("3840x2160", pictures[1]);
            progress?.Report((Interlocked.Increment(ref done), drawings.Count));

            void WriteBytes(string size, byte[] png) =>
                WholeFile.WriteBytes(Path.Combine(folder, Invariant($"{drawing.Name}-{size}.png")), stream => stream.Write(png));
        });
        return 3 * drawings.Count;
    }
}
