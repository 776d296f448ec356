using Tarry.Findings.Samples;
using Tarry.Statistics.Descriptives;
using Tarry.Statistics.Shapes;

namespace Tarry.Findings.Shapes;

/// <summary>A condition's sessions that shapes were fitted to, and the fits.</summary>
internal sealed record FittedCondition(IReadOnlyList<SessionSample> Sessions, ShapeChoice Choice)
{
    // A lump with less of the trials than this is a late tail of the other.
    private const double LeastShareOfALump = 0.25;
    private const double BeyondTheBlock = 1e-4;

    public int Trials { get; } = Sessions.Sum(session => session.Latencies.Count);

    /// <summary>The main block: all of the shape, or its earlier lump where the later is rare.</summary>
    public LatencyShape Main => Choice.Best.Shape is TwoLumpShape { LaterShare: < LeastShareOfALump } lumps ? lumps.Earlier : Choice.Best.Shape;

    /// <summary>Where the main block ends, in milliseconds, where the sessions are on average.</summary>
    public double BlockEndMs => Main.Quantile(1 - BeyondTheBlock);

    /// <summary>The latencies of each session, where the sessions are on average, in capture order.</summary>
    public IEnumerable<double[]> InCommonPlace() =>
        Sessions.Select((session, j) => Array.ConvertAll(session.Latencies.InOrder.ToArray(), value => value - Choice.Best.PlacesMs[j]));

    /// <summary>The variance within sessions of the responses in the main block, and its standard error, ms squared.</summary>
    public (double Variance, double StandardError) VarianceOfMainBlock()
    {
        var end = BlockEndMs;
        double sum = 0, fourth = 0;
        int count = 0, sessions = 0;
        foreach (var session in InCommonPlace())
        {
            var kept = session.Where(value => value <= end).ToArray();
            if (kept.Length < 2)
            {
                continue;
            }

            var mean = Moments.Mean(kept);
            sessions++;
            count += kept.Length;
            foreach (var value in kept)
            {
                var square = (value - mean) * (value - mean);
                sum += square;
                fourth += square * square;
            }
        }

        var variance = sum / Math.Max(1, count - sessions);
        return (variance, Math.Sqrt(Math.Max(0, (fourth / count) - (variance * variance)) / count));
    }
}
