using Tarry.Studies.Sticks;

namespace Tarry.Rig.Sticks.Recording;

/// <summary>What is to be recorded of the rig's readings.</summary>
/// <param name="Procedure">What is done.</param>
public sealed record StickRecordingRequest(StickProcedure Procedure)
{
    /// <summary>Time between readings, 625 to 1,000,000.</summary>
    public uint IntervalUs { get; init; } = 1_000;

    /// <summary>Whether the greatest reading stands for the board's own supply, not for the voltage at AREF.</summary>
    public bool AgainstSupply { get; init; }

    /// <summary>Whether the wiper of y gives less as the stick is pushed away.</summary>
    public bool YIsDown { get; init; }

    /// <summary>The standard uncertainty of the stimulus; null where not stated.</summary>
    public double? StimulusUncertainty { get; init; }
}
