using Tarry.Findings.Conditions;
using Tarry.Findings.Shapes;
using Tarry.Metrology;
using Tarry.Reports.Wording;

namespace Tarry.Reports.Figures;

/// <summary>The marks of one condition in a distribution figure.</summary>
internal static class DistributionMarks
{
    /// <summary>Draws them.</summary>
    /// <param name="canvas">Where to draw.</param>
    /// <param name="panels">The panels.</param>
    /// <param name="row">The condition.</param>
    /// <param name="isFirst">Whether it is the first, which is filled and drawn solid.</param>
    public static void Draw(Canvas canvas, DistributionPanels panels, RankedRow row, bool isFirst)
    {
        if (row.Condition.Density is { } density)
        {
            Edge(canvas, panels, density, row, isFirst);
        }

        if (row.Condition.Distribution is { } curve)
        {
            Curve(canvas, panels, curve, row, isFirst);
        }

        Mean(canvas, panels, row);
    }

    /// <summary>The density of a fitted shape, as a thin dashed line.</summary>
    public static void Fit(Canvas canvas, DistributionPanels panels, FittedCurve fit)
    {
        var points = fit.PerMs
            .Select((perMs, index) => (Ms: fit.FromMs + (index * fit.StepMs), PerMs: perMs))
            .Where(point => panels.Axis.Main.Holds(point.Ms))
            .Select(point => (panels.Axis.Main.At(point.Ms), panels.Density.At(point.PerMs)));
        canvas.Trace(points, "axis", width: 0.1, dashed: true);
    }

    /// <summary>The quantiles on the distribution function, each with its interval.</summary>
    public static void Quantiles(Canvas canvas, DistributionPanels panels, ConditionFinding condition)
    {
        foreach (var (level, outcome) in new[] { (0.05, condition.P05), (0.25, condition.P25), (0.5, condition.Median), (0.75, condition.P75), (0.95, condition.P95) })
        {
            if (outcome is Estimate<Latency> quantile && panels.Axis.Main.Holds(quantile.Value.Milliseconds))
            {
                var y = panels.Share.At(level);
                canvas.Line(panels.Axis.Main.At(quantile.Interval.Low.Milliseconds), y, panels.Axis.Main.At(quantile.Interval.High.Milliseconds), y, Line(condition), 0.17);
                canvas.Dot(panels.Axis.Main.At(quantile.Value.Milliseconds), y, 0.22, Solid(condition));
            }
        }
    }

    internal static string Line(ConditionFinding condition) => condition.IsReference ? "reference-line" : "mark";

    private static string Solid(ConditionFinding condition) => condition.IsReference ? "reference-solid" : "mark-solid";

    private static void Edge(Canvas canvas, DistributionPanels panels, DensityCurve density, RankedRow row, bool isFirst)
    {
        var main = panels.Axis.Main;
        var edge = SharedTail.Between(density, main.Low, main.High).Select(point => (X: main.At(point.Ms), Y: panels.Density.At(point.PerMs))).ToList();
        if (edge.Count > 1)
        {
            if (isFirst)
            {
                canvas.Trace([(edge[0].X, panels.UpperBase), .. edge, (edge[^1].X, panels.UpperBase)], "pale", closed: true);
            }

            canvas.Trace(edge, Line(row.Condition), width: 0.13, dashed: !isFirst);
        }

        if (panels.Axis.Tail is { } tail && panels.Axis.CutMs is { } cut)
        {
            var tallest = panels.Rows.Select(other => other.Condition.Density).OfType<DensityCurve>().Max(other => RidgeCurve.TailPeak(other, cut));
            RidgeCurve.DrawTail(canvas, density, tail, panels.UpperBase, 0.5 * (panels.UpperBase - panels.Top), tallest, row, isOpen: !isFirst);
        }
    }

    private static void Curve(Canvas canvas, DistributionPanels panels, DistributionCurve curve, RankedRow row, bool isFirst)
    {
        foreach (var scale in new[] { panels.Axis.Main, panels.Axis.Tail }.OfType<Scale>())
        {
            var points = Between(curve, scale).Select(point => (X: scale.At(point.LatencyMs), point.Share)).ToList();
            canvas.Trace(
                [
                    .. points.Select(point => (point.X, panels.Share.At(point.Share + curve.HalfHeight))),
                    .. points.AsEnumerable().Reverse().Select(point => (point.X, panels.Share.At(point.Share - curve.HalfHeight))),
                ],
                "pale",
                closed: true);
            canvas.Trace(points.Select(point => (point.X, panels.Share.At(point.Share))), Line(row.Condition), width: 0.13, dashed: !isFirst);
        }
    }

    // To both ends of the axis: nothing is answered before the first point, and no more after the last.
    private static IEnumerable<DistributionPoint> Between(DistributionCurve curve, Scale scale)
    {
        var before = curve.Points.LastOrDefault(point => point.LatencyMs <= scale.Low);
        var until = curve.Points.LastOrDefault(point => point.LatencyMs <= scale.High);
        return curve.Points
            .Where(point => point.LatencyMs > scale.Low && point.LatencyMs < scale.High)
            .Prepend(before with { LatencyMs = scale.Low })
            .Append(until with { LatencyMs = scale.High });
    }

    private static void Mean(Canvas canvas, DistributionPanels panels, RankedRow row)
    {
        var scale = panels.Axis.Main;
        if (row.Mean is not { } mean || !scale.Holds(mean.Value.Milliseconds))
        {
            return;
        }

        canvas.Line(scale.At(mean.Interval.Low.Milliseconds), panels.UpperBase, scale.At(mean.Interval.High.Milliseconds), panels.UpperBase, Line(row.Condition), 0.2, row.IsOpen);
        canvas.Dot(scale.At(mean.Value.Milliseconds), panels.UpperBase, 0.28, row.IsOpen ? Solid(row.Condition).Replace("solid", "open", StringComparison.Ordinal) : Solid(row.Condition));
    }
}
