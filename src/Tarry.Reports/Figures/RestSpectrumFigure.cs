using System.Xml.Linq;
using Tarry.Findings;
using Tarry.Findings.Sticks;
using Tarry.Findings.Sticks.Measures;
using Tarry.Findings.Sticks.Rest;
using Tarry.Reports.Wording;

namespace Tarry.Reports.Figures;

/// <summary>The noise at rest over frequency: a row an axis, in it the spectral density of each session, and the tones that stand out of it.</summary>
internal static class RestSpectrumFigure
{
    private const double LabelSize = 0.75;
    private const double Column = 0.3;
    private const int MostDecades = 5;
    private const double Headroom = 1.5;

    /// <summary>Whether a stick at rest has a spectrum.</summary>
    public static bool IsWorthDrawing(FindingsDocument document) => Of(document).Count > 0;

    /// <summary>The figure.</summary>
    public static XElement Build(FindingsDocument document, FigureStyle style)
    {
        var rows = Of(document);
        var spectra = rows.SelectMany(row => row.Shown.Spectra).ToList();
        var (lowest, highest) = (spectra.Min(spectrum => spectrum.StepHz), spectra.Max(spectrum => spectrum.StepHz * spectrum.PercentPerRootHz.Count));
        var (floor, ceiling) = Decades(spectra.SelectMany(spectrum => spectrum.PercentPerRootHz).Where(density => density > 0));
        IReadOnlyList<double> Hertz(int most) => LogarithmicTicks.Inside(Math.Max(lowest, 1), Math.Max(highest, 1), most);
        var figure = new StickRows(
            new("stick-spectrum", $"Noise at rest over frequency: {document.Title}", $"{document.Title}: noise at rest over frequency", $"Noise at rest over frequency. {string.Join(' ', rows.Select(row => row.Label.Sentence))}", Notes(document, spectra)),
            (left, right) => Scale.Logarithmic(lowest, highest, left, right),
            (Hertz(10), Hertz(5)),
            "frequency, Hz");
        return figure.Draw(style, rows, (canvas, across, top, bottom, shown) => DrawRow(canvas, across, Scale.Logarithmic(floor, ceiling, bottom, top), shown));
    }

    private static List<(StickRow Label, Axis Shown)> Of(FindingsDocument document) =>
    [
        .. (document.Sticks?.Conditions ?? []).SelectMany(finding => finding.Spectra
            .GroupBy(spectrum => spectrum.Part).OrderBy(group => group.Key)
            .Select(group => (Label(finding, group.Key), new Axis([.. group], [.. finding.Lines.Where(line => line.Part == group.Key)])))),
    ];

    private static StickRow Label(StickFinding finding, StickPart part)
    {
        var noise = finding.Estimate(StickMeasure.RestNoise, part);
        var lines = finding.Lines.Where(line => line.Part == part).Select(StickWording.Line).ToList();
        return new StickRow(
            $"{finding.Id}, {StickWording.Part(part)}",
            noise is null ? "not told" : $"{StickWording.Value(noise)}{Numbers.NoBreakSpace}%",
            noise is null ? "" : StickWording.Bounds(noise),
            lines.Count > 0
                ? new($"tone at {string.Join("; ", lines)}", IsFault: true)
                : new("no tone is told", IsFault: false),
            Numbers.Count(finding.Spectra.Count(spectrum => spectrum.Part == part), "session"));
    }

    private static void DrawRow(Canvas canvas, Scale across, Scale up, Axis shown)
    {
        for (var density = up.Low; density <= up.High * 1.001; density *= 10)
        {
            canvas.Line(across.At(across.Low), up.At(density), across.At(across.High), up.At(density), "rule", 0.06);
        }

        foreach (var spectrum in shown.Spectra)
        {
            canvas.Trace(Envelope(spectrum.PercentPerRootHz.Select((density, index) => (across.At((index + 1) * spectrum.StepHz), up.At(density)))), "mark", width: 0.1);
        }

        canvas.Text(across.At(across.Low) + 0.3, up.At(up.High) + 0.9, Density(up.High), "soft", size: LabelSize);
        canvas.Text(across.At(across.Low) + 0.3, up.At(up.Low) - 0.3, Density(up.Low), "soft", size: LabelSize);
        DrawLines(canvas, across, up, shown.Lines);
    }

    // Where many frequencies fall into one column of the drawing, the least and the greatest of them.
    private static IEnumerable<(double X, double Y)> Envelope(IEnumerable<(double X, double Y)> points) =>
        points.GroupBy(point => Math.Floor(point.X / Column)).SelectMany(column => new[] { column.MinBy(point => point.Y), column.MaxBy(point => point.Y) }.Distinct().OrderBy(point => point.X));

    // Names that would lie on each other take turns in height.
    private static void DrawLines(Canvas canvas, Scale across, Scale up, IReadOnlyList<ToldLine> lines)
    {
        foreach (var (line, index) in lines.OrderBy(line => line.FrequencyHz).Select((line, index) => (line, index)))
        {
            var x = across.At(line.FrequencyHz);
            var isRight = x > (across.At(across.Low) + across.At(across.High)) / 2;
            canvas.Line(x, up.At(up.Low), x, up.At(up.High), "reference-line", 0.1, dashed: true);
            canvas.Text(isRight ? x - 0.3 : x + 0.3, up.At(up.High) + 0.95 + (index % 3 * 0.95), StickWording.Frequency(line), "reference", isRight ? Anchor.End : Anchor.Start, 0.85);
        }
    }

    private static string Density(double percentPerRootHz) => $"{percentPerRootHz.ToString("0.########", System.Globalization.CultureInfo.InvariantCulture)}{Numbers.NoBreakSpace}%/√Hz";

    private static (double Floor, double Ceiling) Decades(IEnumerable<double> densities)
    {
        var (least, greatest) = densities.DefaultIfEmpty(1).Aggregate((Least: double.MaxValue, Greatest: 0.0), (ends, density) => (Math.Min(ends.Least, density), Math.Max(ends.Greatest, density)));
        var ceiling = Math.Ceiling(Math.Log10(Headroom * greatest));
        return (Math.Pow(10, Math.Max(Math.Min(Math.Floor(Math.Log10(least)), ceiling - 1), ceiling - MostDecades)), Math.Pow(10, ceiling));
    }

    private static IReadOnlyList<string> Notes(FindingsDocument document, List<RestSpectrum> spectra) =>
    [
        $"Blue: the root of the spectral density of each session, in per cent of half the range per root hertz; lower is stiller. All rows have one scale, both ways by the logarithm. Averaged over {Span(spectra)} pieces a session; what is lower than the foot of a row lies on it.",
        $"Dashed, with its frequency: a tone that stands out at 5{Numbers.NoBreakSpace}% over all frequencies of a session, such as the hum of mains. Number: the noise as standard deviation over all frequencies, with its 95{Numbers.NoBreakSpace}% interval.",
        .. Missing(document),
    ];

    private static IEnumerable<string> Missing(FindingsDocument document)
    {
        var missing = (document.Sticks?.Conditions ?? []).Where(finding => finding.Clouds.Count > 0)
            .SelectMany(finding => new[] { StickPart.X, StickPart.Y }.Where(part => finding.Spectra.All(spectrum => spectrum.Part != part)).Select(part => $"{finding.Id}, {StickWording.Part(part)}"))
            .ToList();
        return missing.Count == 0 ? [] : [$"Not drawn, since all positions at rest were alike, fewer than {Numbers.Whole(RestSpectrum.FewestPositions)} or not evenly spaced in time: {string.Join("; ", missing)}."];
    }

    private static string Span(List<RestSpectrum> spectra)
    {
        var (least, most) = (spectra.Min(spectrum => spectrum.Pieces), spectra.Max(spectrum => spectrum.Pieces));
        return least == most ? Numbers.Whole(least) : $"{Numbers.Whole(least)} to {Numbers.Whole(most)}";
    }

    private sealed record Axis(IReadOnlyList<RestSpectrum> Spectra, IReadOnlyList<ToldLine> Lines);
}
