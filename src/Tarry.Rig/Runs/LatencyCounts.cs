namespace Tarry.Rig.Runs;

/// <summary>Counts latencies by steps of 0.1 ms: every one, however many there are. For the shape of a run while it grows.</summary>
/// <remarks>Step n holds latencies from n x 0.1 ms up to the next. Counts merge exactly. May be used from several threads.</remarks>
public sealed class LatencyCounts
{
    /// <summary>The width of a step.</summary>
    public const double StepMs = 0.1;

    // So that 0.3 ms, which binary numbers hold as a little less, is in the step that begins there.
    private const double StepsPerMs = 10;
    private readonly Lock gate = new();
    private readonly SortedDictionary<long, long> counts = [];

    /// <summary>How many there are.</summary>
    public long Total { get; private set; }

    /// <summary>Takes a latency.</summary>
    public void Add(double latencyMs)
    {
        var step = (long)Math.Floor(latencyMs * StepsPerMs);
        lock (gate)
        {
            counts[step] = counts.GetValueOrDefault(step) + 1;
            Total++;
        }
    }

    /// <summary>The steps that hold any, in order of latency: a copy.</summary>
    public IReadOnlyList<(long Step, long Count)> InOrder()
    {
        lock (gate)
        {
            return [.. counts.Select(entry => (entry.Key, entry.Value))];
        }
    }
}
