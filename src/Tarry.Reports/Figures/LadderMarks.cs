using Tarry.Metrology;

namespace Tarry.Reports.Figures;

/// <summary>The marks of one ladder: rungs with their intervals, and the line that joins them.</summary>
internal static class LadderMarks
{
    /// <summary>Draws the ladder of a row, its lowest rung at the bottom.</summary>
    public static void Draw(Canvas canvas, Scale scale, RankedRow row, double bottom, double height)
    {
        var line = row.Condition.IsReference ? "reference-line" : "mark";
        var rungs = LadderRungs.Of(row.Condition)
            .Select((outcome, index) => (Outcome: outcome, Index: index, Y: bottom - (height * index / (LadderRungs.Names.Count - 1))))
            .Where(rung => rung.Outcome is Estimate<Latency>)
            .Select(rung => (Estimate: (Estimate<Latency>)rung.Outcome, rung.Index, rung.Y))
            .ToList();
        var shown = rungs.Where(rung => scale.Holds(rung.Estimate.Value.Milliseconds)).Select(rung => (scale.At(rung.Estimate.Value.Milliseconds), rung.Y)).ToList();
        if (shown.Count > 1)
        {
            canvas.Trace(shown, line, width: 0.05);
        }

        foreach (var (estimate, index, y) in rungs)
        {
            DrawRung(canvas, scale, row, estimate, y, isMedian: LadderRungs.Names[index] == "p50");
        }
    }

    private static void DrawRung(Canvas canvas, Scale scale, RankedRow row, Estimate<Latency> rung, double y, bool isMedian)
    {
        var line = row.Condition.IsReference ? "reference-line" : "mark";
        var (low, high) = (rung.Interval.Low.Milliseconds, rung.Interval.High.Milliseconds);
        canvas.Line(scale.At(low), y, scale.At(high), y, line, 0.13, dashed: rung.Sessions == 1);
        if (!scale.Holds(high))
        {
            canvas.Trace([(scale.At(high), y - 0.2), (scale.At(high) + 0.35, y), (scale.At(high), y + 0.2)], line, width: 0.08);
        }

        var value = rung.Value.Milliseconds;
        if (!scale.Holds(value))
        {
            return;
        }

        var solid = row.Condition.IsReference ? "reference-solid" : "mark-solid";
        var open = row.Condition.IsReference ? "reference-open" : "mark-open";
        canvas.Dot(scale.At(value), y, isMedian ? 0.26 : 0.2, isMedian ? open : solid);
    }
}
