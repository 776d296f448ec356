using System.Runtime.InteropServices;
using Tarry.Statistics.Intervals;

namespace Tarry.Rig.Runs;

/// <summary>How well the mean of this session is known so far: the 95 % interval by 20 batch means. Within this session only.</summary>
/// <remarks>It says nothing of how sittings differ, and a run that stops at a half-width stops on this alone. Renewed every 2 % of the trials, so that the whole costs little.</remarks>
internal sealed class WithinSessionPrecision
{
    private readonly List<double> latenciesMs = [];
    private int renewedAt;

    /// <summary>The mean, with at least 40 responses.</summary>
    public double? MeanMs { get; private set; }

    /// <summary>The interval's half-width, with at least 40 responses.</summary>
    public double? HalfWidthMs { get; private set; }

    /// <summary>The newest latencies, oldest first.</summary>
    public IReadOnlyList<double> Newest(int count) => latenciesMs[^Math.Min(count, latenciesMs.Count)..];

    /// <summary>Takes a latency.</summary>
    public void Add(double latencyMs)
    {
        latenciesMs.Add(latencyMs);
        var count = latenciesMs.Count;
        if (count < BatchMeansInterval.SmallestCount || count - renewedAt < Math.Max(20, count / 50))
        {
            return;
        }

        renewedAt = count;
        var limits = BatchMeansInterval.Of(CollectionsMarshal.AsSpan(latenciesMs));
        MeanMs = (limits.Low + limits.High) / 2;
        HalfWidthMs = (limits.High - limits.Low) / 2;
    }
}
