using Tarry.Metrology;
using Tarry.Statistics.SlotGrid;

namespace Tarry.Findings.ReportIntervals;

/// <summary>The report interval of a condition, found from when it was pressed and when it answered, or why none is claimed.</summary>
public sealed record ReportIntervalFinding
{
    /// <summary>The interval on the data's own clock; null where none is claimed.</summary>
    public Estimate<LatencyDifference>? Interval { get; init; }

    /// <summary>What speaks for it; null where none is claimed.</summary>
    public SlotGridEvidence? Evidence { get; init; }

    /// <summary>Why none is claimed; null where one is.</summary>
    public UnidentifiedInterval? Unidentified { get; init; }

    /// <summary>How wrong the data's own clock may be against the second: to be added for absolute statements.</summary>
    public required ClockUncertainty Clock { get; init; }

    /// <summary>The interval of the frames that the responses fall on; null where there is no stable grid of them.</summary>
    public LatencyDifference? FrameInterval { get; init; }

    /// <summary>The delay without the waits for slot and frame, over sessions; null where the frame's wait cannot be taken off.</summary>
    public EstimateOutcome<Latency>? FixedDelay { get; init; }

    /// <summary>The fixed delay of each series of presses, in the order of sessions.</summary>
    public IReadOnlyList<SessionFixedDelay> FixedDelays { get; init; } = [];

    /// <summary>For the reference: the lines that it shows and whose they are, by sitting; else empty.</summary>
    public IReadOnlyList<ChainGrid> ChainLines { get; init; } = [];

    /// <summary>The width of the block that the latencies' distribution shows; null where it shows none or was not fitted.</summary>
    public LatencyDifference? ShapeBlockWidth { get; init; }

    /// <summary>How grid and shape go together.</summary>
    public required SlotShapeAgreement Agreement { get; init; }

    /// <summary>The responses folded over the grids, for the figure; null where no interval is claimed.</summary>
    public SlotFold? Fold { get; init; }
}
