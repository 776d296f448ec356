using Tarry.Findings.Conditions;
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
    /// <param name="counts">The counts.</param>
    /// <param name="reference">The reference's density; null for none.</param>
    public static LatencyShape? Of(LatencyCounts counts, DensityCurve? reference)
    {
        ArgumentNullException.ThrowIfNull(counts);
        var steps = counts.InOrder();
        var total = steps.Sum(step => step.Count);
        if (total == 0)
        {
            return null;
        }

        var (first, last) = (StepAt(steps, total * Tail), StepAt(steps, total * (1 - Tail)));
        if (reference is not null)
        {
            var (low, high) = Centre(reference);
            (first, last) = (Math.Min(first, low), Math.Max(last, high));
        }

        // Ends at round places, so that the axis does not move with every trial.
        var width = Widths.First(candidate => (last - first + 1) / (double)candidate <= MostClasses - 20 || candidate == Widths[^1]);
        var from = (long)Math.Floor((first - width) / (10.0 * width)) * 10 * width;
        var classes = (int)((long)Math.Ceiling((last + 1 + width) / (10.0 * width)) * 10 - (from / width));
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
                shares[(int)place] += (double)count / total;
            }
        }

        var fromMs = from * LatencyCounts.StepMs;
        var classMs = width * LatencyCounts.StepMs;
        return new LatencyShape(
            total, fromMs, classMs, shares, reference is null ? null : Shared(reference, fromMs, classMs, classes), sooner, later, steps[^1].Step * LatencyCounts.StepMs);
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

    private static (long Low, long High) Centre(DensityCurve curve)
    {
        var sum = 0.0;
        long? low = null;
        for (var index = 0; index < curve.PerMs.Count; index++)
        {
            sum += curve.PerMs[index] * curve.StepMs;
            var step = (long)Math.Floor((curve.FromMs + (index * curve.StepMs)) / LatencyCounts.StepMs);
            low ??= sum >= Tail ? step : null;
            if (sum >= 1 - Tail)
            {
                return (low ?? step, step);
            }
        }

        var end = (long)Math.Floor((curve.FromMs + (curve.PerMs.Count * curve.StepMs)) / LatencyCounts.StepMs);
        return (low ?? end, end);
    }

    private static double[] Shared(DensityCurve curve, double fromMs, double classMs, int classes)
    {
        var shares = new double[classes];
        for (var index = 0; index < curve.PerMs.Count; index++)
        {
            var place = (int)Math.Floor((curve.FromMs + (index * curve.StepMs) - fromMs) / classMs);
            if (place >= 0 && place < classes)
            {
                shares[place] += curve.PerMs[index] * curve.StepMs;
            }
        }

        return shares;
    }
}
