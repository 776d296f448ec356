namespace Tarry.Findings.Tests.Simulation;

/// <summary>How a simulated study is made.</summary>
internal sealed record SimulatedDesign
{
    /// <summary>Its conditions, the first of them the reference.</summary>
    public required IReadOnlyList<SimulatedCondition> Conditions { get; init; }

    public int Sittings { get; init; } = 4;

    public int Trials { get; init; } = 200;

    /// <summary>The standard deviation of what a sitting adds to all of its conditions alike.</summary>
    public double SharedSdMs { get; init; } = 0.1;

    /// <summary>The standard deviation of what a session adds of its own.</summary>
    public double OwnSdMs { get; init; } = 0.28;

    /// <summary>Chance that a session was never run; two sessions a condition are always there.</summary>
    public double MissingShare { get; init; }

    /// <summary>Whether offsets take two values only instead of being normal.</summary>
    public bool TwoValued { get; init; }

    public double MarginMs { get; init; } = 0.5;

    /// <summary>Whether press times are known; without them there is no report interval to look for, which is most of the work.</summary>
    public bool KnowsPressTimes { get; init; } = true;
}
