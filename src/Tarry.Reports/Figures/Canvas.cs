using System.Globalization;
using System.Xml.Linq;
using Tarry.Reports.Wording;

namespace Tarry.Reports.Figures;

/// <summary>An SVG drawing in units of its text size, from the top left.</summary>
internal sealed class Canvas
{
    private static readonly XNamespace Svg = "http://www.w3.org/2000/svg";

    // In pixels: a seventh of one is not seen, and a report of a dozen conditions stays small enough to mail.
    private const double Unseen = 0.14;
    private readonly double unit;

    /// <summary>An empty drawing.</summary>
    /// <param name="style">What it is drawn for.</param>
    /// <param name="heightEm">Its height where the style leaves it open.</param>
    /// <param name="figure">The figure's name, for ids.</param>
    /// <param name="title">Its title for assistive technology.</param>
    /// <param name="description">What it shows, in full, for those who cannot see it.</param>
    public Canvas(FigureStyle style, double heightEm, string figure, string title, string description)
    {
        unit = style.TextSize;
        WidthEm = style.Width / unit;
        HeightEm = style.Height is { } height ? height / unit : heightEm;
        var id = $"{figure}-{style.Name}";
        Root = new XElement(
            Svg + "svg",
            new XAttribute("class", "tarry-figure"),
            new XAttribute("viewBox", $"0 0 {style.Width} {Pixels(HeightEm)}"),
            new XAttribute("width", style.Width),
            new XAttribute("height", Pixels(HeightEm)),
            new XAttribute("role", "img"),
            new XAttribute("aria-labelledby", $"{id}-title"),
            new XAttribute("aria-describedby", $"{id}-desc"),
            new XElement(Svg + "title", new XAttribute("id", $"{id}-title"), PlainText.Clean(title)),
            new XElement(Svg + "desc", new XAttribute("id", $"{id}-desc"), PlainText.Clean(description)),
            style.Theme == FigureTheme.Inherited ? null : new XElement(Svg + "style", FigureStyleSheet.For(style.Theme)));
        Box(0, 0, WidthEm, HeightEm, "paper");
    }

    /// <summary>The drawing.</summary>
    public XElement Root { get; }

    /// <summary>Its width in text sizes.</summary>
    public double WidthEm { get; }

    /// <summary>Its height in text sizes.</summary>
    public double HeightEm { get; }

    /// <summary>A line of text with its baseline at y, cut to its room; the whole text is kept as a tooltip where it was cut. Empty text draws nothing.</summary>
    public void Text(double x, double y, string text, string cssClass = "", Anchor anchor = Anchor.Start, double size = 1, double room = double.PositiveInfinity)
    {
        if (text.Length == 0)
        {
            return;
        }

        var clean = PlainText.Clean(text);
        var shown = TextFit.Cut(clean, room / size);
        var element = Add(
            "text",
            ("x", Pixels(x)),
            ("y", Pixels(y)),
            ("font-size", Pixels(size)),
            ("class", cssClass),
            ("text-anchor", anchor switch { Anchor.Middle => "middle", Anchor.End => "end", _ => "" }));
        if (shown != clean)
        {
            element.Add(new XElement(Svg + "title", clean));
        }

        element.Add(shown);
    }

    /// <summary>A straight line.</summary>
    public void Line(double x1, double y1, double x2, double y2, string cssClass, double width = 0.08, bool dashed = false) => Add(
        "line",
        ("x1", Pixels(x1)),
        ("y1", Pixels(y1)),
        ("x2", Pixels(x2)),
        ("y2", Pixels(y2)),
        ("class", cssClass),
        ("stroke-width", Pixels(width)),
        ("stroke-dasharray", dashed ? $"{Pixels(0.3)} {Pixels(0.22)}" : ""));

    /// <summary>A rectangle.</summary>
    public void Box(double x, double y, double width, double height, string cssClass, double strokeWidth = 0) => Add(
        "rect",
        ("x", Pixels(x)),
        ("y", Pixels(y)),
        ("width", Pixels(width)),
        ("height", Pixels(height)),
        ("class", cssClass),
        ("stroke-width", strokeWidth > 0 ? Pixels(strokeWidth) : ""));

    /// <summary>A dot.</summary>
    public void Dot(double x, double y, double radius, string cssClass) => Add(
        "circle",
        ("cx", Pixels(x)),
        ("cy", Pixels(y)),
        ("r", Pixels(radius)),
        ("class", cssClass),
        ("stroke-width", Pixels(0.11)));

    /// <summary>A line through points, or the area under it where it is closed.</summary>
    public void Trace(IEnumerable<(double X, double Y)> points, string cssClass, bool closed = false, double width = 0.1, bool dashed = false)
    {
        var path = string.Join('L', PathThinning.Of([.. points], Unseen / unit).Select(Point));
        Add(
            "path",
            ("d", $"M{path}{(closed ? "Z" : "")}"),
            ("class", cssClass),
            ("stroke-width", closed ? "" : Pixels(width)),
            ("stroke-linejoin", closed ? "" : "round"),
            ("stroke-dasharray", dashed ? $"{Pixels(0.3)} {Pixels(0.22)}" : ""));
    }

    /// <summary>A circle that is not filled.</summary>
    public void Ring(double x, double y, double radius, string cssClass, double width, bool dashed = false) => Add(
        "circle",
        ("cx", Pixels(x)),
        ("cy", Pixels(y)),
        ("r", Pixels(radius)),
        ("class", cssClass),
        ("stroke-width", Pixels(width)),
        ("stroke-dasharray", dashed ? $"{Pixels(0.3)} {Pixels(0.22)}" : ""));

    /// <summary>Many straight lines of one kind.</summary>
    public void Lines(IEnumerable<(double X1, double Y1, double X2, double Y2)> lines, string cssClass, double width) => Add(
        "path",
        ("d", string.Concat(lines.Select(line => $"M{Point((line.X1, line.Y1))}L{Point((line.X2, line.Y2))}"))),
        ("class", cssClass),
        ("stroke-width", Pixels(width)));

    /// <summary>Many small squares of one kind about their middles; of those that lie on each other, one.</summary>
    public void Squares(IEnumerable<(double X, double Y)> middles, double side, string cssClass)
    {
        var edge = Pixels(side);
        var corners = middles.Select(middle => Point((middle.X - (side / 2), middle.Y - (side / 2)))).Distinct();
        Add("path", ("d", string.Concat(corners.Select(corner => $"M{corner}h{edge}v{edge}h-{edge}z"))), ("class", cssClass));
    }

    private XElement Add(string name, params ReadOnlySpan<(string Name, string Value)> attributes)
    {
        var element = new XElement(Svg + name);
        foreach (var (attribute, value) in attributes)
        {
            if (value.Length > 0)
            {
                element.Add(new XAttribute(attribute, value));
            }
        }

        Root.Add(element);
        return element;
    }

    private string Point((double X, double Y) point) => $"{Rounded(point.X, 1)} {Rounded(point.Y, 1)}";

    private string Pixels(double em) => Rounded(em, 2);

    private string Rounded(double em, int decimals)
    {
        var rounded = Math.Round(em * unit, decimals);
        return (rounded == 0 ? 0 : rounded).ToString("0.##", CultureInfo.InvariantCulture);
    }
}
