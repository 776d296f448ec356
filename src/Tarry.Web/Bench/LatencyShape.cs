using Tarry.Rig.Runs;

namespace Tarry.Web.Bench;

/// <summary>The latencies of a run so far as shares in even classes, over the reference condition's.</summary>
/// <param name="Count">All latencies counted, those beyond the ends too.</param>
/// <param name="FromMs">Where the first class begins.</param>
/// <param name="ClassMs">The width of a class, ms.</param>
/// <param name="Shares">Share of all latencies in each class.</param>
/// <param name="ReferenceShares">The reference's share in each class; null without a reference that has data.</param>
/// <param name="Sooner">Latencies before the first class.</param>
/// <param name="Later">Latencies after the last class.</param>
/// <param name="LatestMs">The greatest latency, to 0.1 ms below.</param>
public sealed record LatencyShape(
    long Count, double FromMs, double ClassMs, IReadOnlyList<double> Shares, IReadOnlyList<double>? ReferenceShares, long Sooner, long Later, double LatestMs)
{
    private const int MostClasses = 72;
    private const double Tail = 0.005;
    private static readonly long[] Widths = [1, 2, 5, 10, 20, 50, 100, 200, 500, 1000, 2000, 5000, 10_000, 20_000];

    /// <summary>Where the last class ends.</summary>
    public double ToMs => FromMs + (Shares.Count * ClassMs);

    /// <summary>The greatest share of either.</summary>
    public double GreatestShare => Math.Max(Shares.Max(), ReferenceShares?.Max() ?? 0);

    /// <summary>The shape of what is counted; null where nothing is.</summary>
    /// <param name="steps">The counts in order.</param>
    /// <param name="reference">The reference's counts; empty for none.</param>
    public static LatencyShape? Of(IReadOnlyList<(long Step, long Count)> steps, IReadOnlyList<(long Step, long Count)> reference)
    {
        ArgumentNullException.ThrowIfNull(steps);
        ArgumentNullException.ThrowIfNull(reference);
        if (steps.Count == 0)
        {
            return null;
        }

        var (first, last) = Middle(steps);
        if (reference.Count > 0)
        {
            var (low, high) = Middle(reference);
            (first, last) = (Math.Min(first, low), Math.Max(last, high));
        }

        // Ends at round places, so that the axis does not move with every trial.
        var width = Widths.First(candidate => (last - first + 1) / (double)candidate <= MostClasses - 20 || candidate == Widths[^1]);
        var from = (long)Math.Floor((first - width) / (10.0 * width)) * 10 * width;
        var classes = (int)((long)Math.Ceiling((last + 1 + width) / (10.0 * width)) * 10 - (from / width));
        var (shares, sooner, later) = Shared(steps, from, width, classes);
        return new LatencyShape(
            steps.Sum(step => step.Count),
            from * LatencyCounts.StepMs,
            width * LatencyCounts.StepMs,
            shares,
            reference.Count > 0 ? Shared(reference, from, width, classes).Shares : null,
            sooner,
            later,
            steps[^1].Step * LatencyCounts.StepMs);
    }

    private static (double[] Shares, long Sooner, long Later) Shared(IReadOnlyList<(long Step, long Count)> steps, long from, long width, int classes)
    {
        double total = steps.Sum(step => step.Count);
        var shares = new double[classes];
        var (sooner, later) = (0L, 0L);
        foreach (var (step, count) in steps)
        {
            var place = Math.Floor((step - from) / (double)width);
            if (place < 0)
            {
                sooner += count;
            }
            else if (place >= classes)
            {
                later += count;
            }
            else
            {
                shares[(int)place] += count / total;
            }
        }

        return (shares, sooner, later);
    }

    private static (long First, long Last) Middle(IReadOnlyList<(long Step, long Count)> steps)
    {
        var total = steps.Sum(step => step.Count);
        return (StepAt(steps, total * Tail), StepAt(steps, total * (1 - Tail)));
    }

    private static long StepAt(IReadOnlyList<(long Step, long Count)> steps, double rank)
    {
        var below = 0L;
        foreach (var (step, count) in steps)
        {
            below += count;
            if (below >= rank)
            {
                return step;
            }
        }

        return steps[^1].Step;
    }
}
