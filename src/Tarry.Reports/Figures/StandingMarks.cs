using Tarry.Metrology;

namespace Tarry.Reports.Figures;

/// <summary>The marks of one condition in the standing: pale bar, median tick, interval with its mean.</summary>
internal static class StandingMarks
{
    private const double BarHalf = 0.5;
    private const double CapHalf = 0.42;

    /// <summary>Draws a row's marks around a height.</summary>
    public static void Draw(Canvas canvas, Scale scale, RankedRow row, double y)
    {
        var condition = row.Condition;
        var bar = condition.P05 is Estimate<Latency> low && condition.P95 is Estimate<Latency> high
            ? (Low: low.Value.Milliseconds, High: high.Value.Milliseconds)
            : ((double Low, double High)?)null;
        if (bar is { } span)
        {
            DrawBar(canvas, scale, span.Low, span.High, y, row.IsOpen);
        }

        if (condition.Median is Estimate<Latency> median && scale.Holds(median.Value.Milliseconds))
        {
            var x = scale.At(median.Value.Milliseconds);
            canvas.Line(x, y - BarHalf, x, y + BarHalf, Role(row, "mark", "reference-line"), 0.13);
        }

        if (row.Mean is { } mean)
        {
            DrawInterval(canvas, scale, mean, y, Role(row, "mark", "reference-line"), row.IsOpen);
            var dot = row.IsOpen ? Role(row, "mark-open", "reference-open") : Role(row, "mark-solid", "reference-solid");
            canvas.Dot(scale.At(mean.Value.Milliseconds), y, 0.25, dot);
        }
    }

    /// <summary>Whether a row has marks that the axis cuts.</summary>
    public static bool IsCut(Scale scale, RankedRow row) =>
        (row.Mean is { } mean && (!scale.Holds(mean.Interval.Low.Milliseconds) || !scale.Holds(mean.Interval.High.Milliseconds)))
        || (row.Condition.P05 is Estimate<Latency> && row.Condition.P95 is Estimate<Latency> high && !scale.Holds(high.Value.Milliseconds));

    private static string Role(RankedRow row, string ordinary, string reference) =>
        row.Condition.IsReference ? reference : ordinary;

    private static void DrawBar(Canvas canvas, Scale scale, double low, double high, double y, bool open)
    {
        var (left, right) = (scale.At(low), scale.At(high));
        if (open)
        {
            canvas.Box(left, y - BarHalf, Math.Max(right - left, 0.1), 2 * BarHalf, "outline", 0.07);
        }
        else
        {
            canvas.Box(left, y - BarHalf, Math.Max(right - left, 0.1), 2 * BarHalf, "pale");
        }

        if (!scale.Holds(high))
        {
            DrawArrow(canvas, right, y, "axis", 0.45);
        }
    }

    private static void DrawInterval(Canvas canvas, Scale scale, Estimate<Latency> mean, double y, string role, bool dashed)
    {
        var low = mean.Interval.Low.Milliseconds;
        var high = mean.Interval.High.Milliseconds;
        canvas.Line(scale.At(low), y, scale.At(high), y, role, 0.15, dashed);
        DrawEnd(canvas, scale, low, y, role, -0.45);
        DrawEnd(canvas, scale, high, y, role, 0.45);
    }

    private static void DrawEnd(Canvas canvas, Scale scale, double value, double y, string role, double outward)
    {
        var x = scale.At(value);
        if (scale.Holds(value))
        {
            canvas.Line(x, y - CapHalf, x, y + CapHalf, role, 0.12);
        }
        else
        {
            DrawArrow(canvas, x, y, role, outward);
        }
    }

    private static void DrawArrow(Canvas canvas, double x, double y, string role, double outward) =>
        canvas.Trace([(x, y - 0.3), (x + outward, y), (x, y + 0.3)], role);
}
