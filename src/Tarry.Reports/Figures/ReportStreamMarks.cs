namespace Tarry.Reports.Figures;

/// <summary>The marks of one report stream: a bar a bin, and the declared interval.</summary>
internal static class ReportStreamMarks
{
    private const double NearSlot = 0.5;
    private const double LeastHeight = 0.12;

    /// <summary>Draws them between two heights.</summary>
    public static void Draw(Canvas canvas, ReportStreamRow row, Scale scale, double top, double bottom)
    {
        var histogram = row.Stream.Histogram!;
        var slotMs = ((Metrology.Estimate<Metrology.Latency>)row.Stream.Interval).Value.Milliseconds;
        var most = Math.Log(1 + histogram.Counts.Max());
        for (var bin = 0; bin < histogram.Counts.Count; bin++)
        {
            if (histogram.Counts[bin] == 0)
            {
                continue;
            }

            var from = (histogram.From + (bin * histogram.BinWidth)) / slotMs;
            var to = from + (histogram.BinWidth / slotMs);
            var height = Math.Max(LeastHeight, (bottom - top) * Math.Log(1 + histogram.Counts[bin]) / most);
            var isSingle = Math.Abs(((from + to) / 2) - 1) < NearSlot;
            canvas.Box(scale.At(from), bottom - height, scale.At(to) - scale.At(from), height, isSingle ? "mark-solid" : "mark-open", isSingle ? 0 : 0.09);
        }

        // Over the bars: as a rule it is where the highest one stands.
        if (row.Declared is { } declared && scale.Holds(declared))
        {
            canvas.Line(scale.At(declared), top, scale.At(declared), bottom, "reference-line", 0.16, dashed: true);
        }

        canvas.Line(scale.At(scale.Low), bottom, scale.At(scale.High), bottom, "axis", 0.05);
    }
}
