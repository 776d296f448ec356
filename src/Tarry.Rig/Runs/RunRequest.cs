using Tarry.Studies.Sessions;

namespace Tarry.Rig.Runs;

/// <summary>What to capture.</summary>
public sealed record RunRequest
{
    /// <summary>The settings of a run where the user says nothing: the rig's own defaults.</summary>
    public static RunSettings DefaultSettings { get; } = new("edge", 70_000, 120_000, 20_000, 60_000, 10_000, 1);

    /// <summary>Which session.</summary>
    public required SessionKey Key { get; init; }

    /// <summary>How to press.</summary>
    public RunSettings Settings { get; init; } = DefaultSettings;

    /// <summary>Stop after this many trials of the session; null for no such end.</summary>
    public long? Trials { get; init; }

    /// <summary>Stop when the mean is known to this half-width, within this session; null for no such end.</summary>
    public double? HalfWidthMs { get; init; }

    /// <summary>The response edge falls (light: darker).</summary>
    public bool FallingEdge { get; init; }

    /// <summary>A response sooner than this is early.</summary>
    public long EarlyMinimumUs { get; init; } = 20;

    /// <summary>Light threshold in 1/256 of the supply.</summary>
    public long LightThreshold { get; init; } = 128;

    /// <summary>Allows an interval spread below 50 ms, which aliases with report and frame periods.</summary>
    public bool AllowNarrowInterval { get; init; }

    /// <summary>How long to wait for a rig that is gone to come back.</summary>
    public TimeSpan ReturnLimit { get; init; } = TimeSpan.FromMinutes(10);

    /// <summary>What is known of the bench, kept in the session's record.</summary>
    public BenchNotes Bench { get; init; } = new();
}
