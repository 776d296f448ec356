namespace Tarry.Statistics.SlotGrid;

/// <summary>Why no report interval is claimed. The JSON name is the words with hyphens, in lower case.</summary>
public enum ReportIntervalReason
{
    /// <summary>Press times are not known.</summary>
    NoPressTimes,

    /// <summary>Latencies are known as intervals only.</summary>
    LatenciesAreIntervals,

    /// <summary>Fewer presses than a spectrum is worth.</summary>
    TooFewTrials,

    /// <summary>Press intervals are so alike that report and frame periods alias.</summary>
    PressLattice,

    /// <summary>Presses keep step with a period, and a line may be theirs.</summary>
    PhaseLocked,

    /// <summary>No line stands out of the noise, beyond those of the chain.</summary>
    NoGridSeen,

    /// <summary>Several intervals explain the responses equally well.</summary>
    ImagesNotToldApart,

    /// <summary>There are frames, but responses cannot be assigned to them, and the line seen may be a mixture of slots and frames.</summary>
    FramesNotIndexed,

    /// <summary>Report and frame interval beat so slowly that a session does not see two beats.</summary>
    Beat,

    /// <summary>The chain has a further grid beside the frames, and what is seen may be that one.</summary>
    FurtherGrid,

    /// <summary>A grid is seen, but nothing tells whether it belongs to the device or to the chain.</summary>
    NotAttributed,
}
