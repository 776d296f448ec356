using Tarry.Metrology;
using Tarry.Studies.Sessions;

namespace Tarry.Findings.Samples;

/// <summary>A session made ready for statistics: what is used of it, in milliseconds on its fitted clock.</summary>
internal sealed class SessionSample
{
    public required SessionKey Key { get; init; }

    public required SessionRecord Record { get; init; }

    public required SessionCounts Counts { get; init; }

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

    public required IReadOnlyList<string> ExclusionReasons { get; init; }
}
