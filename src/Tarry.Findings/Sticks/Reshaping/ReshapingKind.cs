namespace Tarry.Findings.Sticks.Reshaping;

/// <summary>What a layer was found to do.</summary>
public enum ReshapingKind
{
    /// <summary>Maps the circle to a square.</summary>
    CircleToSquare,

    /// <summary>Says nothing of small positions.</summary>
    DeadZone,

    /// <summary>Says its end before the device says its own.</summary>
    Saturation,

    /// <summary>Bends what lies between: small positions are made smaller, or larger.</summary>
    Curve,
}
