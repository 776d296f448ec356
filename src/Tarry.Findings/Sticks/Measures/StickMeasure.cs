namespace Tarry.Findings.Sticks.Measures;

/// <summary>What is measured of a stick; <see cref="StickMeasureText"/> defines each.</summary>
public enum StickMeasure
{
    /// <summary>How far the rest position lies from the middle of the range.</summary>
    CentreOffset,

    /// <summary>Standard deviation of positions at rest, slow drift left out.</summary>
    RestNoise,

    /// <summary>Greatest less least position within a second at rest.</summary>
    RestPeakToPeak,

    /// <summary>How fast the rest position moves.</summary>
    CentreDrift,

    /// <summary>Bits that noise and rounding at rest leave.</summary>
    EffectiveResolution,

    /// <summary>How many positions an axis can say.</summary>
    DistinctSteps,

    /// <summary>By how much the stick stops short of the centre, on the side it comes from.</summary>
    ReturnLag,

    /// <summary>Standard deviation of where it comes to rest after release.</summary>
    ReturnScatter,

    /// <summary>How far it swings past its rest position after release.</summary>
    ReleaseOvershoot,

    /// <summary>How long it takes to rest after release.</summary>
    ReleaseSettling,

    /// <summary>How far it reaches in a direction.</summary>
    Reach,

    /// <summary>Radius of the circle of least squares through a turn.</summary>
    CircleRadius,

    /// <summary>Centre of that circle.</summary>
    CircleCentre,

    /// <summary>Peak-to-valley deviation from that circle.</summary>
    RadialDeviation,

    /// <summary>Radial width of the narrowest ring that holds a turn.</summary>
    MinimumZone,

    /// <summary>By how much x says more than y.</summary>
    GainDifference,

    /// <summary>By how much the angle between the axes falls short of a right angle.</summary>
    NonOrthogonality,

    /// <summary>How far along it is from a circle to a square.</summary>
    Squareness,

    /// <summary>Position on the way back less position on the way there.</summary>
    Hysteresis,

    /// <summary>The greatest angular error at a stop.</summary>
    AngularError,

    /// <summary>The mean angular error: how far the stick is turned in its housing.</summary>
    AngularRotation,

    /// <summary>The greatest departure from the best straight line.</summary>
    NonLinearityBestFit,

    /// <summary>The greatest departure from the line through both ends.</summary>
    NonLinearityEndPoint,

    /// <summary>The greatest departure of a step from the mean step.</summary>
    DifferentialNonLinearity,

    /// <summary>Bits of the converter whose rounding alone errs as much as the axis about its best line.</summary>
    EffectiveBits,

    /// <summary>What one axis says of the other's motion.</summary>
    Crosstalk,

    /// <summary>How far the stick moves off its centre before the axis says so.</summary>
    InnerDeadZone,

    /// <summary>Where the axis says no more although the stick goes on.</summary>
    OuterSaturation,

    /// <summary>From a jump of the stimulus to half of the answer.</summary>
    StepLatency,

    /// <summary>From a tenth to nine tenths of the answer.</summary>
    StepRise,

    /// <summary>How far the answer goes beyond its final level.</summary>
    StepOvershoot,

    /// <summary>From the jump until the answer stays at its final level.</summary>
    StepSettling,

    /// <summary>Time between two report slots of the axes.</summary>
    ReportInterval,
}
