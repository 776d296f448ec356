namespace Tarry.Studies.Sticks;

/// <summary>What a recording of a stick is: the key <c>stick</c> of <c>session.json</c>.</summary>
public sealed record StickSetup
{
    /// <summary>What was done with the stick.</summary>
    public required StickProcedure Procedure { get; init; }

    /// <summary>Where the positions come from: <c>rig</c> (its converter at the wiper), <c>host-events</c>, <c>reports</c> (a packet capture) or <c>csv</c>.</summary>
    public required string Source { get; init; }

    /// <summary>The range that the x axis can say, in counts.</summary>
    public required StickRange X { get; init; }

    /// <summary>The range that the y axis can say, in counts; up is greater, also where the device says it the other way round.</summary>
    public required StickRange Y { get; init; }

    /// <summary>What is known of the true position.</summary>
    public StickStimulus Stimulus { get; init; } = StickStimulus.None;

    /// <summary>The standard uncertainty of the stimulus, in its unit: degrees, or a share of the supply; null where not stated.</summary>
    public double? StimulusUncertainty { get; init; }
}
