using Tarry.Findings.Conditions;
using Tarry.Findings.DeviceOnly;
using Tarry.Metrology;

namespace Tarry.Reports.Figures;

/// <summary>The marks of one row of the device alone: both densities, the band of the second, both means.</summary>
internal static class DeviceOnlyMarks
{
    /// <summary>Draws a row on its baseline.</summary>
    public static void Draw(Canvas canvas, RankedRow row, DeviceOnlyPanels panels, double baseline, double height)
    {
        Baseline(canvas, panels.Measured, baseline);
        Baseline(canvas, panels.Alone, baseline);
        if (row.Condition.Density is { } measured)
        {
            RidgeCurve.DrawMain(canvas, measured, panels.Measured, baseline, height, row);
        }

        if (row.Mean is { } mean)
        {
            Mean(canvas, panels.Measured, baseline, mean.Value.Milliseconds, mean.Interval.Low.Milliseconds, mean.Interval.High.Milliseconds, row.IsOpen);
        }

        var alone = row.Condition.DeviceOnly!;
        if (alone.Density is { } density)
        {
            Density(canvas, density, panels.Alone, baseline, height);
            if (row.Condition.BlockWidth?.Width is { } width)
            {
                Block(canvas, density, width.Value.Milliseconds, panels.Alone, baseline, height);
            }
        }
        else if (alone.Refusal is { } refusal)
        {
            var left = panels.Alone.At(panels.Alone.Low);
            canvas.Text(left + 0.4, baseline - 0.8, DeviceOnlyWording.Words(refusal.Kind), "soft", size: 0.9, room: panels.Alone.At(panels.Alone.High) - left - 0.4);
        }

        if (alone.Mean is Estimate<LatencyDifference> ownMean)
        {
            Mean(canvas, panels.Alone, baseline, ownMean.Value.Milliseconds, ownMean.Interval.Low.Milliseconds, ownMean.Interval.High.Milliseconds, ownMean.Sessions == 1);
        }
    }

    private static void Baseline(Canvas canvas, Scale scale, double baseline) =>
        canvas.Line(scale.At(scale.Low), baseline, scale.At(scale.High), baseline, "rule", 0.06);

    private static void Density(Canvas canvas, DeviceOnlyDensity density, Scale scale, double baseline, double height)
    {
        var peak = density.HighPerMs.Max();
        List<(double X, double Y)> Edge(IReadOnlyList<double> perMs) =>
        [
            .. SharedTail.Between(new DensityCurve(density.FromMs, density.StepMs, perMs, 0), scale.Low, scale.High)
                .Select(point => (scale.At(point.Ms), baseline - (height * point.PerMs / peak))),
        ];
        var (low, middle, high) = (Edge(density.LowPerMs), Edge(density.PerMs), Edge(density.HighPerMs));
        if (middle.Count < 2)
        {
            return;
        }

        canvas.Trace([.. high, .. low.AsEnumerable().Reverse()], "pale", closed: true);
        canvas.Trace(middle, "mark", width: 0.11);
    }

    /// <summary>The block that the wait for the report slot alone would make: as wide as the shape says, about the middle of the density.</summary>
    private static void Block(Canvas canvas, DeviceOnlyDensity density, double widthMs, Scale scale, double baseline, double height)
    {
        var middle = MiddleMs(density);
        var (left, right) = (middle - (widthMs / 2), middle + (widthMs / 2));
        if (scale.Holds(left) && scale.Holds(right))
        {
            var top = baseline - Math.Min(height, height / widthMs / density.HighPerMs.Max());
            canvas.Trace([(scale.At(left), baseline), (scale.At(left), top), (scale.At(right), top), (scale.At(right), baseline)], "axis", width: 0.07, dashed: true);
        }
    }

    // The median, which a few late responses do not move.
    private static double MiddleMs(DeviceOnlyDensity density)
    {
        var (half, below, index) = (density.PerMs.Sum() / 2, 0.0, 0);
        while (below + density.PerMs[index] < half)
        {
            below += density.PerMs[index++];
        }

        return density.FromMs + (density.StepMs * (index - 0.5 + ((half - below) / density.PerMs[index])));
    }

    private static void Mean(Canvas canvas, Scale scale, double baseline, double value, double low, double high, bool open)
    {
        if (scale.Holds(value))
        {
            canvas.Line(scale.At(low), baseline, scale.At(high), baseline, "mark", 0.2, open);
            canvas.Dot(scale.At(value), baseline, 0.26, open ? "mark-open" : "mark-solid");
        }
    }
}
