namespace Tarry.Findings.Sticks.Measures;

/// <summary>Why recordings cannot support a measure; <see cref="StickRefusalWording"/> says what to do.</summary>
public enum StickRefusalReason
{
    /// <summary>No session of a procedure that shows it.</summary>
    NotRecorded,

    /// <summary>Too few positions.</summary>
    TooFewPositions,

    /// <summary>The recording is too short, in seconds.</summary>
    TooShort,

    /// <summary>Too few full turns.</summary>
    TooFewTurns,

    /// <summary>Full turns one way only.</summary>
    OneWayOnly,

    /// <summary>Turns so fast that parts of the circle hold no position; in positions a turn.</summary>
    TooFast,

    /// <summary>The circle is cut off at the end of the range; in degrees.</summary>
    CutOff,

    /// <summary>Too few releases from the gate.</summary>
    TooFewReleases,

    /// <summary>Releases from too few directions.</summary>
    TooFewDirections,

    /// <summary>Too few stops of known angle.</summary>
    TooFewStops,

    /// <summary>Too few visits of each stop.</summary>
    TooFewVisits,

    /// <summary>The recording has no stimulus of the kind.</summary>
    NoStimulus,

    /// <summary>Too few passes from end to end.</summary>
    TooFewPasses,

    /// <summary>No pass goes back, or none goes there.</summary>
    NoPassBack,

    /// <summary>Too few positions for each step of the axis.</summary>
    TooFewAStep,

    /// <summary>The step of the axis is not known and not seen.</summary>
    NoStep,

    /// <summary>Every position is one and the same.</summary>
    NothingMoves,

    /// <summary>The directions do not go with the angles of the stops.</summary>
    StopsDisagree,

    /// <summary>A recording of rest in which the stick moved.</summary>
    NotAtRest,

    /// <summary>Every position is one and the same, and nothing shows how coarse the axis is.</summary>
    StepNotShown,

    /// <summary>It is not known that the other axis stood still.</summary>
    OtherAxisUnknown,

    /// <summary>Too few jumps of the stimulus.</summary>
    TooFewJumps,

    /// <summary>Reports do not come on a grid.</summary>
    NoGrid,

    /// <summary>Too few sessions or replicates for an interval.</summary>
    TooFewReplicates,
}
