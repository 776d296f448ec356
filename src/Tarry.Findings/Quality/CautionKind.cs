namespace Tarry.Findings.Quality;

/// <summary>What a reader must know beside a result. The JSON name is the words with hyphens, in lower case.</summary>
public enum CautionKind
{
    /// <summary>One sitting only: what differs between sittings is unknown.</summary>
    OneSitting,

    /// <summary>One specimen of the device.</summary>
    OneUnit,

    /// <summary>Too few trials in a session.</summary>
    TooFewTrials,

    /// <summary>Presses without a response.</summary>
    MissedShare,

    /// <summary>A mean of those that arrived flatters a lossy link.</summary>
    LossFavours,

    /// <summary>Latency drifted within a session.</summary>
    Drift,

    /// <summary>Latency changed abruptly within a session.</summary>
    ChangePoint,

    /// <summary>Trials depend on each other.</summary>
    Dependence,

    /// <summary>Presses keep step with a known period.</summary>
    PhaseLocked,

    /// <summary>The press intervals are so alike that they alias with report and frame periods.</summary>
    PressLattice,

    /// <summary>Report and frame period beat so slowly that a session is under two beats.</summary>
    Beat,

    /// <summary>The latencies form separate lumps.</summary>
    Modes,

    /// <summary>Between-session scatter differs plainly between groups of conditions.</summary>
    UnequalVariances,

    /// <summary>The shape is not what the report rate predicts.</summary>
    ShapeUnexpected,

    /// <summary>The rig's clock was not fitted against the host's.</summary>
    ClockNotFitted,

    /// <summary>The rig restarted in mid-run.</summary>
    RigRebooted,

    /// <summary>Rows or frames were refused.</summary>
    RefusedRows,

    /// <summary>Latencies are known as intervals only.</summary>
    IntervalCensored,

    /// <summary>Two studies are linked through references that are not fully stated.</summary>
    ReferenceUnstated,

    /// <summary>The reference's own latency differs between two studies.</summary>
    ReferenceMoved,

    /// <summary>Two studies have different margins.</summary>
    MarginsDiffer,

    /// <summary>A retest in which more than one factor differs.</summary>
    SeveralFactors,

    /// <summary>Sessions were captured by a rig that was not calibrated.</summary>
    RigUncalibrated,

    /// <summary>A session is still open: its run was paused, broke off or goes on.</summary>
    NotFinished,
}
