namespace Tarry.Studies.Sticks;

/// <summary>What a recording of a stick is: the key <c>stick</c> of <c>session.json</c>.</summary>
public sealed record StickSetup
{
    /// <summary>The source of positions that the rig's own converter reads at the wiper.</summary>
    public const string FromRig = "rig";

    /// <summary>The source of positions that the host's system tells.</summary>
    public const string FromHostEvents = "host-events";

    /// <summary>The source of positions from the reports of a packet capture.</summary>
    public const string FromReports = "reports";

    /// <summary>The source of positions from a table.</summary>
    public const string FromCsv = "csv";

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

    /// <summary>What is wrong with it, in words; null if nothing is.</summary>
    public string? Broken() => this switch
    {
        _ when !Enum.IsDefined(Procedure) || !Enum.IsDefined(Stimulus) => "its procedure or stimulus is none that is known",
        { Source: not (FromRig or FromHostEvents or FromReports or FromCsv) } => $"'{Source}' is no source of positions",
        { StimulusUncertainty: { } uncertainty } when !(double.IsFinite(uncertainty) && uncertainty >= 0) => "the uncertainty of the stimulus is not a number of at least 0",
        { StimulusUncertainty: not null, Stimulus: StickStimulus.None } => "it states the uncertainty of a stimulus that it does not have",
        _ => X.Broken("x") ?? Y.Broken("y"),
    };
}
