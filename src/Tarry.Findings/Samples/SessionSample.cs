using Tarry.Metrology;
using Tarry.Statistics.Censoring;
using Tarry.Studies.Sessions;

namespace Tarry.Findings.Samples;

/// <summary>A session made ready for statistics: what is used of it, in milliseconds on its fitted clock.</summary>
internal sealed class SessionSample
{
    public required SessionKey Key { get; init; }

    public required SessionRecord Record { get; init; }

    public required SessionCounts Counts { get; init; }

    /// <summary>Whether it is finished; else trials may still come.</summary>
    public bool Sealed { get; init; } = true;

    /// <summary>Used latencies in capture order, and the misses.</summary>
    public required Sample Latencies { get; init; }

    /// <summary>Sequence number of each used latency.</summary>
    public required long[] Sequences { get; init; }

    /// <summary>Press times of all presses of the longest segment, in milliseconds; empty where not known.</summary>
    public required double[] PressTimesMs { get; init; }

    /// <summary>The used latencies with their press times, segment by segment: a restart of the rig begins another clock.</summary>
    public IReadOnlyList<TimedLatencies> Timed { get; init; } = [];

    /// <summary>The step in which its latencies come: the greatest common divisor of their differences; 0 where all are alike.</summary>
    public required double ResolutionMs { get; init; }

    /// <summary>Whether any used latency is known as an interval only.</summary>
    public required bool IntervalCensored { get; init; }

    /// <summary>The bounds of each used latency, ms, in capture order; null where all are known to the tick.</summary>
    public IReadOnlyList<CensoredValue>? BoundsMs { get; init; }

    /// <summary>Half the width of the mean latency's interval, ms; 0 where all latencies are known to the tick.</summary>
    public double HalfWidthMs => BoundsMs is { Count: > 0 } bounds ? bounds.Average(bound => bound.High - bound.Low) / 2 : 0;

    /// <summary>The same session with other latencies, such as the bounds of its own, known to the tick.</summary>
    public SessionSample WithLatencies(IEnumerable<double> latencies) => new()
    {
        Key = Key,
        Record = Record,
        Counts = Counts,
        Sealed = Sealed,
        Latencies = new Sample([.. latencies], Latencies.Missed),
        Sequences = Sequences,
        PressTimesMs = PressTimesMs,
        ResolutionMs = 0,
        IntervalCensored = false,
        ExclusionReasons = ExclusionReasons,
    };

    public required IReadOnlyList<string> ExclusionReasons { get; init; }
}
