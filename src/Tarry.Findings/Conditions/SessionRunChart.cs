using Tarry.Findings.Samples;
using Tarry.Statistics.Quantiles;

namespace Tarry.Findings.Conditions;

/// <summary>Thins a session's latencies in order to what a figure can show.</summary>
internal static class SessionRunChart
{
    private const int FewestResponses = 50;
    private const int FewestInBatch = 25;
    private const int MostBatches = 48;
    private const int MostLate = 60;

    public static RunChart? Of(SessionSample session, LateDefinition? late)
    {
        var latencies = session.Latencies.InOrder;
        if (latencies.Length < FewestResponses)
        {
            return null;
        }

        var count = Math.Min(MostBatches, latencies.Length / FewestInBatch);
        var batches = new List<RunChartBatch>(count);
        for (var batch = 0; batch < count; batch++)
        {
            var (from, to) = ((int)((long)latencies.Length * batch / count), (int)((long)latencies.Length * (batch + 1) / count));
            var sorted = latencies[from..to].ToArray();
            Array.Sort(sorted);
            double At(double level) => SampleQuantile.Of(sorted, level)!.Value;
            batches.Add(new RunChartBatch(session.Sequences[from], session.Sequences[to - 1], At(0.5), At(0.05), At(0.95)));
        }

        var beyond = Late(session, late);
        return new RunChart(
            batches,
            [.. beyond.OrderByDescending(point => point.LatencyMs).Take(MostLate).OrderBy(point => point.Sequence)],
            beyond.Count);
    }

    private static List<RunChartPoint> Late(SessionSample session, LateDefinition? late)
    {
        var points = new List<RunChartPoint>();
        if (late is null)
        {
            return points;
        }

        var latencies = session.Latencies.InOrder;
        for (var i = 0; i < latencies.Length; i++)
        {
            if (latencies[i] > late.Threshold.Milliseconds)
            {
                points.Add(new RunChartPoint(session.Sequences[i], latencies[i]));
            }
        }

        return points;
    }
}
