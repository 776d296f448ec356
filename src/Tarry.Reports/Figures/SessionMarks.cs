using Tarry.Findings.Conditions;
using Tarry.Metrology;

namespace Tarry.Reports.Figures;

/// <summary>The marks of the sessions of one condition, about its mean.</summary>
internal static class SessionMarks
{
    /// <summary>The sessions that have a mean with an interval, where their condition has one to set them against.</summary>
    public static IReadOnlyList<SessionFinding> Shown(RankedRow row) =>
        row.Mean is null ? [] : [.. row.Condition.Sessions.Where(session => session.Mean is Estimate<Latency>)];

    /// <summary>An axis about zero that holds every mark.</summary>
    public static Ticks Cover(IReadOnlyList<RankedRow> rows, int steps)
    {
        var farthest = rows
            .SelectMany(row => Shown(row).SelectMany(session => Ends(row, session)).Concat(MeanEnds(row)))
            .Select(Math.Abs)
            .DefaultIfEmpty(0)
            .Max();
        return farthest > 0 ? Ticks.Cover(-farthest, farthest, steps) : Ticks.Cover(-1, 1, steps);
    }

    /// <summary>Draws a row between two heights.</summary>
    public static void Draw(Canvas canvas, Scale scale, RankedRow row, double top, double bottom)
    {
        var sessions = Shown(row);
        if (sessions.Count == 0)
        {
            return;
        }

        var band = MeanEnds(row).Select(scale.At).ToList();
        if (!row.IsOpen)
        {
            canvas.Box(band[0], top, Math.Max(band[1] - band[0], 0.1), bottom - top, "pale");
        }

        var line = row.Condition.IsReference ? "reference-line" : "mark";
        for (var index = 0; index < sessions.Count; index++)
        {
            var session = sessions[index];
            var y = top + ((bottom - top) * (index + 0.5) / sessions.Count);
            var ends = Ends(row, session).Select(scale.At).ToList();
            canvas.Line(ends[0], y, ends[1], y, line, 0.13, dashed: !session.InPool);
            var dot = (row.Condition.IsReference, session.InPool) switch
            {
                (true, true) => "reference-solid",
                (true, false) => "reference-open",
                (false, true) => "mark-solid",
                _ => "mark-open",
            };
            canvas.Dot(scale.At(Less(row, ((Estimate<Latency>)session.Mean).Value)), y, 0.22, dot);
        }
    }

    private static IEnumerable<double> Ends(RankedRow row, SessionFinding session)
    {
        var interval = ((Estimate<Latency>)session.Mean).Interval;
        return [Less(row, interval.Low), Less(row, interval.High)];
    }

    private static IEnumerable<double> MeanEnds(RankedRow row) =>
        row.Mean is { } mean ? [Less(row, mean.Interval.Low), Less(row, mean.Interval.High)] : [];

    private static double Less(RankedRow row, Latency value) => value.Milliseconds - row.Mean!.Value.Milliseconds;
}
