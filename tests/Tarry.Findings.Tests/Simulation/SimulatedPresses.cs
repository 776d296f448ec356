namespace Tarry.Findings.Tests.Simulation;

/// <summary>When the rig presses.</summary>
internal enum SimulatedPresses
{
    /// <summary>Every 80 ms + Uniform(0, 50 ms), as asked for.</summary>
    Free,

    /// <summary>Every 100 ms, give or take 2 ms.</summary>
    Lattice,

    /// <summary>At whole multiples of the report period of the device's own clock, give or take 0.2 ms, 9 to 16 periods apart.</summary>
    Locked,
}
