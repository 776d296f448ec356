using Tarry.Findings.ReportIntervals;

namespace Tarry.Reports.Figures;

/// <summary>The marks of one row of the fold.</summary>
internal static class FoldMarks
{
    private const int MostDots = 120;

    // A rare late response must not flatten the sawtooth.
    private const double ShownShare = 0.98;

    /// <summary>Draws a row between two heights.</summary>
    public static void Draw(Canvas canvas, RankedRow row, Scale press, Scale response, double top, double bottom)
    {
        var found = row.Condition.ReportInterval!;
        DrawSawtooth(canvas, row, found.Fold!, found.Interval!.Value.Milliseconds, press, top, bottom);
        DrawArrivals(canvas, row, found.Fold!, response, top, bottom);
    }

    private static void DrawSawtooth(Canvas canvas, RankedRow row, SlotFold fold, double intervalMs, Scale press, double top, double bottom)
    {
        var latencies = fold.Points.Select(point => point.LatencyMs).Order().ToList();
        if (latencies.Count == 0)
        {
            return;
        }

        var low = latencies[0];
        var high = Math.Max(latencies[(int)(ShownShare * (latencies.Count - 1))], low + 0.1);
        var scale = Scale.Linear(low, high, bottom, top);
        var every = Math.Max(1, (fold.Points.Count + MostDots - 1) / MostDots);
        canvas.Squares(
            fold.Points
                .Where((point, index) => index % every == 0 && scale.Holds(point.LatencyMs))
                .Select(point => (press.At(point.PressPhaseMs / intervalMs), scale.At(point.LatencyMs))),
            0.16,
            "pale");

        var mean = fold.LatencyByPhase
            .Select((bin, index) => (bin.Trials, X: press.At((index + 0.5) / fold.LatencyByPhase.Count), Y: scale.At(bin.MeanLatencyMs)))
            .Where(bin => bin.Trials > 0)
            .Select(bin => (bin.X, bin.Y))
            .ToList();
        if (mean.Count > 1)
        {
            canvas.Trace(mean, Line(row), width: 0.11);
        }
    }

    private static void DrawArrivals(Canvas canvas, RankedRow row, SlotFold fold, Scale response, double top, double bottom)
    {
        var counts = fold.ArrivalsInFrame.Count > 0 ? fold.ArrivalsInFrame : AboutTheSlot(fold.ArrivalsInReportInterval);
        canvas.Line(response.At(response.Low), bottom, response.At(response.High), bottom, "rule", 0.06);
        var most = counts.DefaultIfEmpty(0).Max();
        if (most == 0)
        {
            return;
        }

        var edge = counts.SelectMany((count, index) =>
        {
            var y = bottom - ((bottom - top) * count / most);
            return new[] { (response.At(-0.5 + ((double)index / counts.Count)), y), (response.At(-0.5 + ((index + 1.0) / counts.Count)), y) };
        }).ToList();
        canvas.Trace([(edge[0].Item1, bottom), .. edge, (edge[^1].Item1, bottom)], "pale", closed: true);
        canvas.Trace(edge, Line(row), width: 0.09);
    }

    // From half an interval before the slot to half after.
    private static IReadOnlyList<int> AboutTheSlot(IReadOnlyList<int> fromTheSlot)
    {
        var half = fromTheSlot.Count / 2;
        return [.. fromTheSlot.Skip(half), .. fromTheSlot.Take(half)];
    }

    private static string Line(RankedRow row) => row.Condition.IsReference ? "reference-line" : "mark";
}
