using System.Globalization;
using System.Xml.Linq;
using Tarry.Reports.Merits;

namespace Tarry.Reports.Figures;

/// <summary>One interval as a strip in a table: the value, its interval, and behind it the span of the latencies. What it shows stands in words beside it.</summary>
public static class IntervalStrip
{
    private static readonly XNamespace Svg = "http://www.w3.org/2000/svg";

    /// <summary>The strip as SVG text; empty axis lines where there is no value.</summary>
    /// <param name="axis">The axis that all strips of the table share.</param>
    /// <param name="value">What is shown.</param>
    /// <param name="span">From where to where most latencies lie; null for none.</param>
    /// <param name="isReference">Whether it is the reference's.</param>
    /// <param name="referenceAt">The reference's value, for a line through all strips; null for none.</param>
    public static string Draw(StripAxis axis, MeritValue value, (double Low, double High)? span, bool isReference, double? referenceAt)
    {
        ArgumentNullException.ThrowIfNull(axis);
        ArgumentNullException.ThrowIfNull(value);
        var root = new XElement(Svg + "svg", new XAttribute("class", "tarry-figure strip"), new XAttribute("width", "100%"), new XAttribute("aria-hidden", "true"));
        foreach (var (percent, _) in axis.Labels)
        {
            root.Add(Line(percent, percent, "0", "100%", "rule", 1));
        }

        if (referenceAt is { } reference && axis.Holds(reference))
        {
            root.Add(Line(axis.At(reference), axis.At(reference), "0", "100%", "reference-line", 1, isDashed: true));
        }

        if (span is { } shown)
        {
            var (left, right) = (axis.At(shown.Low), axis.At(shown.High));
            root.Add(new XElement(
                Svg + "rect",
                new XAttribute("x", Percent(left)),
                new XAttribute("width", Percent(Math.Max(right - left, 0.3))),
                new XAttribute("y", "27%"),
                new XAttribute("height", "46%"),
                new XAttribute("class", "pale")));
        }

        Interval(root, axis, value, isReference);
        return root.ToString(SaveOptions.DisableFormatting);
    }

    private static void Interval(XElement root, StripAxis axis, MeritValue value, bool isReference)
    {
        var line = isReference ? "reference-line" : "mark";
        if (value is { Low: { } low, High: { } high })
        {
            root.Add(Line(axis.At(low), axis.At(high), "50%", "50%", line, 2, value.IsOpen));
            foreach (var end in new[] { low, high }.Where(axis.Holds))
            {
                root.Add(Line(axis.At(end), axis.At(end), "30%", "70%", line, 2));
            }
        }

        if (value.Value is { } at)
        {
            root.Add(new XElement(
                Svg + "circle",
                new XAttribute("cx", Percent(axis.At(at))),
                new XAttribute("cy", "50%"),
                new XAttribute("r", "4"),
                new XAttribute("class", $"{(isReference ? "reference" : "mark")}-{(value.IsOpen ? "open" : "solid")}")));
        }
    }

    private static XElement Line(double x1, double x2, string y1, string y2, string cssClass, double width, bool isDashed = false) => new(
        Svg + "line",
        new XAttribute("x1", Percent(x1)),
        new XAttribute("x2", Percent(x2)),
        new XAttribute("y1", y1),
        new XAttribute("y2", y2),
        new XAttribute("class", cssClass),
        new XAttribute("stroke-width", width.ToString(CultureInfo.InvariantCulture)),
        isDashed ? new XAttribute("stroke-dasharray", "4 3") : null);

    private static string Percent(double percent) => percent.ToString("0.##", CultureInfo.InvariantCulture) + "%";
}
