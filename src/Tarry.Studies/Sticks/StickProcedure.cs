namespace Tarry.Studies.Sticks;

/// <summary>What was done with a stick while it was recorded: each measure needs the procedure that shows it.</summary>
public enum StickProcedure
{
    /// <summary>Hands off: centre, noise and drift.</summary>
    Rest,

    /// <summary>Pushed to the gate and let go, again and again, from several directions: return to centre and ringing.</summary>
    FlickRelease,

    /// <summary>Slow turns along the gate, both ways: range, circle, hysteresis.</summary>
    RimSweep,

    /// <summary>Held against stops of known angle: angular error.</summary>
    AngleStops,

    /// <summary>Moved slowly along one axis from end to end and back: steps, linearity, dead zone, saturation.</summary>
    SlowRamp,

    /// <summary>The wiper replaced by a known voltage: the true stimulus, for linearity, step response and latency.</summary>
    Substitution,
}
