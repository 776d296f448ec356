using Tarry.Findings.Conditions;
using Tarry.Findings.Quality;

namespace Tarry.Reports.Figures;

/// <summary>The marks of one row of a run chart.</summary>
internal static class RunChartMarks
{
    /// <summary>The latencies that a row's height spans, in milliseconds; null where it has no session to draw.</summary>
    public static (double Low, double High)? Range(RankedRow row)
    {
        var batches = row.Condition.Sessions.SelectMany(session => session.RunChart?.Batches ?? []).ToList();
        if (batches.Count == 0)
        {
            return null;
        }

        // A single batch full of late responses must not flatten the others.
        var tops = batches.Select(batch => batch.P95Ms).Order().ToList();
        var (low, high) = (batches.Min(batch => batch.P05Ms), Math.Max(tops[(int)(0.98 * (tops.Count - 1))], batches.Max(batch => batch.MedianMs)));
        return high > low ? (low, high) : (low - 0.5, low + 0.5);
    }

    /// <summary>Draws a row between two heights.</summary>
    public static void Draw(Canvas canvas, RankedRow row, RunChartColumns columns, double top, double bottom)
    {
        if (Range(row) is not { } range)
        {
            return;
        }

        var scale = Scale.Linear(range.Low, range.High, bottom, top + 0.35);
        foreach (var session in row.Condition.Sessions)
        {
            if (session.RunChart is { } chart)
            {
                Draw(canvas, row, session, chart, columns, scale, top, bottom);
            }
        }
    }

    private static void Draw(Canvas canvas, RankedRow row, SessionFinding session, RunChart chart, RunChartColumns columns, Scale scale, double top, double bottom)
    {
        var line = row.Condition.IsReference ? "reference-line" : "mark";
        var (first, last) = (chart.Batches[0].FirstSequence, Math.Max(chart.Batches[^1].LastSequence, chart.Batches[0].FirstSequence + 1));
        double At(double sequence) => columns.At(session.Key.Sitting, Math.Clamp((sequence - first) / (last - first), 0, 1));
        List<(double X, RunChartBatch Batch)> batches = [.. chart.Batches.Select(batch => (At((batch.FirstSequence + batch.LastSequence) / 2.0), batch))];
        canvas.Trace(
            [
                .. batches.Select(batch => (batch.X, scale.At(batch.Batch.P95Ms))),
                .. batches.AsEnumerable().Reverse().Select(batch => (batch.X, scale.At(batch.Batch.P05Ms))),
            ],
            "pale",
            closed: true);
        canvas.Trace(batches.Select(batch => (batch.X, scale.At(batch.Batch.MedianMs))), line, width: 0.11, dashed: !session.InPool);
        foreach (var point in chart.Late)
        {
            canvas.Dot(At(point.Sequence), top, 0.17, row.Condition.IsReference ? "reference-solid" : "mark-solid");
        }

        foreach (var change in row.Condition.Cautions.Where(caution => caution.Kind == CautionKind.ChangePoint && caution.Subject == session.Key.ToString()))
        {
            if (change.Numbers.TryGetValue("sequence", out var sequence))
            {
                canvas.Line(At(sequence), top, At(sequence), bottom, "axis", 0.1, dashed: true);
            }
        }
    }
}
