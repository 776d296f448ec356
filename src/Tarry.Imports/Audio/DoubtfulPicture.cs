using System.Globalization;
using System.Text;

namespace Tarry.Imports.Audio;

/// <summary>Draws the samples about a doubtful pairing, so that a person can judge it.</summary>
internal static class DoubtfulPicture
{
    private const int Width = 900;
    private const int Height = 160;

    /// <summary>An SVG of both channels over time since the press.</summary>
    public static string Of(string title, ReadOnlySpan<float> press, ReadOnlySpan<float> response, double sampleRateHz, double pressAt)
    {
        var svg = new StringBuilder();
        svg.Append(CultureInfo.InvariantCulture, $"<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 {Width} {(2 * Height) + 50}\" font-family=\"sans-serif\" font-size=\"13\" role=\"img\">\n");
        svg.Append(CultureInfo.InvariantCulture, $"<title>{Escaped(title)}</title>\n<rect width=\"{Width}\" height=\"{(2 * Height) + 50}\" fill=\"#fff\"/>\n<text x=\"8\" y=\"18\">{Escaped(title)}</text>\n");
        Channel(svg, press, 30, "press");
        Channel(svg, response, 30 + Height, "response");
        var x = press.Length == 0 ? 0 : Width * pressAt / press.Length;
        svg.Append(CultureInfo.InvariantCulture, $"<line x1=\"{x:0.0}\" x2=\"{x:0.0}\" y1=\"26\" y2=\"{(2 * Height) + 26}\" stroke=\"#888\" stroke-dasharray=\"3 3\"/>\n");
        svg.Append(CultureInfo.InvariantCulture, $"<text x=\"{x + 4:0.0}\" y=\"{(2 * Height) + 42}\">press</text><text x=\"{Width - 8}\" y=\"{(2 * Height) + 42}\" text-anchor=\"end\">{1000 * press.Length / sampleRateHz:0} ms in all</text>\n</svg>\n");
        return svg.ToString();
    }

    private static void Channel(StringBuilder svg, ReadOnlySpan<float> samples, int top, string name)
    {
        if (samples.IsEmpty)
        {
            return;
        }

        var (low, high) = (float.MaxValue, float.MinValue);
        foreach (var sample in samples)
        {
            (low, high) = (Math.Min(low, sample), Math.Max(high, sample));
        }

        var scale = high > low ? (Height - 16) / (high - low) : 0;
        svg.Append("<polyline fill=\"none\" stroke=\"#1f5f8b\" stroke-width=\"1\" points=\"");
        for (var column = 0; column < Width; column++)
        {
            // The extremes of what falls into a column, so that a click of a few samples is seen.
            var from = (int)((long)column * samples.Length / Width);
            var stretch = samples[from..Math.Min(samples.Length, Math.Max(from + 1, (int)((column + 1L) * samples.Length / Width)))];
            var (least, most) = (float.MaxValue, float.MinValue);
            foreach (var sample in stretch)
            {
                (least, most) = (Math.Min(least, sample), Math.Max(most, sample));
            }

            svg.Append(CultureInfo.InvariantCulture, $"{column},{top + Height - 8 - ((least - low) * scale):0.0} {column},{top + Height - 8 - ((most - low) * scale):0.0} ");
        }

        svg.Append(CultureInfo.InvariantCulture, $"\"/>\n<text x=\"8\" y=\"{top + 14}\" fill=\"#555\">{name}</text>\n");
    }

    private static string Escaped(string text) => System.Security.SecurityElement.Escape(text);
}
