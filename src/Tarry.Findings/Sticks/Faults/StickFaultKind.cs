namespace Tarry.Findings.Sticks.Faults;

/// <summary>In what a stick departs from a faultless one.</summary>
public enum StickFaultKind
{
    /// <summary>It rests off the middle of its range.</summary>
    OffCentre,

    /// <summary>Its rest position moves.</summary>
    Drifts,

    /// <summary>Its steps are coarser than stated.</summary>
    CoarseSteps,

    /// <summary>It comes to rest on the side from which it came.</summary>
    ReturnsShort,

    /// <summary>It swings past its rest position.</summary>
    Overshoots,

    /// <summary>Its turn is no circle.</summary>
    OutOfRound,

    /// <summary>One axis says more than the other.</summary>
    UnequalGain,

    /// <summary>Its axes do not stand at a right angle.</summary>
    NotOrthogonal,

    /// <summary>Its turn is drawn towards a square.</summary>
    Square,

    /// <summary>What it says depends on from where it came.</summary>
    Hysteresis,

    /// <summary>Its direction is wrong at a stop.</summary>
    AngularError,

    /// <summary>It is turned as a whole.</summary>
    Rotated,

    /// <summary>An axis is not straight.</summary>
    NotLinear,

    /// <summary>Its steps are not equal.</summary>
    UnevenSteps,

    /// <summary>It says nothing of small motions.</summary>
    DeadZone,

    /// <summary>It says nothing of large motions.</summary>
    Saturation,

    /// <summary>An axis says something of the other's motion.</summary>
    Crosstalk,
}
