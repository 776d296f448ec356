namespace Tarry.Reports.Figures;

/// <summary>The key of the standing: its marks with their meaning, in words that flow over as many lines as the width needs.</summary>
internal static class StandingLegend
{
    private const double SampleWidth = 2.6;
    private const double Gap = 1.6;
    private const double LineHeight = 1.5;
    private const double TextSize = 0.9;

    /// <summary>The height of the key in a width.</summary>
    public static double Height(double widthEm, string levels) => (Places(widthEm, levels).Max(place => place.Line) + 1) * LineHeight;

    /// <summary>Draws the key.</summary>
    public static void Draw(Canvas canvas, double top, double margin, string levels)
    {
        foreach (var (entry, x, line) in Places(canvas.WidthEm - (2 * margin), levels))
        {
            var left = margin + x;
            var y = top + (LineHeight * (line + 0.5));
            Sample(canvas, entry, left, y);
            canvas.Text(left + SampleWidth + 0.5, y + 0.32, Label(entry, levels), "soft", size: TextSize);
        }
    }

    private static string Label(int entry, string levels) => entry switch
    {
        0 => levels.Length == 0 ? "mean and its interval" : $"mean and its {levels} interval",
        1 => "p5 to p95",
        _ => "median",
    };

    private static IEnumerable<(int Entry, double X, int Line)> Places(double widthEm, string levels)
    {
        var (x, line) = (0.0, 0);
        for (var entry = 0; entry < 3; entry++)
        {
            var width = SampleWidth + 0.5 + (TextSize * TextFit.Width(Label(entry, levels)));
            if (x > 0 && x + width > widthEm)
            {
                (x, line) = (0, line + 1);
            }

            yield return (entry, x, line);
            x += width + Gap;
        }
    }

    private static void Sample(Canvas canvas, int entry, double left, double y)
    {
        var middle = left + (SampleWidth / 2);
        switch (entry)
        {
            case 0:
                canvas.Line(left + 0.2, y, left + SampleWidth - 0.2, y, "mark", 0.15);
                canvas.Line(left + 0.2, y - 0.42, left + 0.2, y + 0.42, "mark", 0.12);
                canvas.Line(left + SampleWidth - 0.2, y - 0.42, left + SampleWidth - 0.2, y + 0.42, "mark", 0.12);
                canvas.Dot(middle, y, 0.25, "mark-solid");
                break;
            case 1:
                canvas.Box(left, y - 0.5, SampleWidth, 1, "pale");
                break;
            default:
                canvas.Line(middle, y - 0.5, middle, y + 0.5, "mark", 0.13);
                break;
        }
    }
}
