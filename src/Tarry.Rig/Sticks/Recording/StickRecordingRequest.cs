using Tarry.Studies.Sticks;

namespace Tarry.Rig.Sticks.Recording;

/// <summary>What is to be recorded of the rig's readings.</summary>
/// <param name="Procedure">What is done.</param>
public sealed record StickRecordingRequest(StickProcedure Procedure)
{
    /// <summary>The shortest time between readings.</summary>
    public const uint LeastIntervalUs = 625;

    /// <summary>The longest.</summary>
    public const uint MostIntervalUs = 1_000_000;

    /// <summary>How long the steps take in all; null for the usual time.</summary>
    public double? Seconds { get; init; }

    /// <summary>How long to wait before the first step, so that the stick can be taken hold of.</summary>
    public double ReadySeconds { get; init; }

    /// <summary>What is done, step by step.</summary>
    /// <exception cref="Runs.RunSettingsException">The time is out of the range for it.</exception>
    public StickGuide Guide => Seconds is { } seconds ? StickGuide.Of(Procedure).Lasting(seconds) : StickGuide.Of(Procedure);

    /// <summary>Time between readings, 625 to 1,000,000.</summary>
    public uint IntervalUs { get; init; } = 1_000;

    /// <summary>Whether the greatest reading stands for the board's own supply, not for the voltage at AREF.</summary>
    public bool AgainstSupply { get; init; }

    /// <summary>Whether the wiper of y gives less as the stick is pushed away.</summary>
    public bool YIsDown { get; init; }

    /// <summary>The standard uncertainty of the stimulus; null where not stated.</summary>
    public double? StimulusUncertainty { get; init; }
}
