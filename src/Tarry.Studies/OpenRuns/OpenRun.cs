using Tarry.Studies.Sessions;

namespace Tarry.Studies.OpenRuns;

/// <summary>What a live run was asked for, beside what its session's record says: kept while the session is open.</summary>
public sealed record OpenRun
{
    /// <summary>The rig's port.</summary>
    public required string Port { get; init; }

    /// <summary>Of a simulated bench: how many of its seconds pass in one; null for as fast as it goes.</summary>
    public double? Speed { get; init; }

    /// <summary>How to press.</summary>
    public required RunSettings Run { get; init; }

    /// <summary>Stop after this many trials of the session; null for no such end.</summary>
    public long? Trials { get; init; }

    /// <summary>Stop when the mean is known to this half-width, within this session; null for no such end.</summary>
    public double? HalfWidthMs { get; init; }

    /// <summary>The response edge falls.</summary>
    public bool FallingEdge { get; init; }

    /// <summary>Light threshold in 1/256 of the supply.</summary>
    public long LightThreshold { get; init; } = 128;

    /// <summary>Press intervals that hardly vary are allowed.</summary>
    public bool AllowNarrowInterval { get; init; }

    /// <summary>What of the host answers; null unless the response is an echo.</summary>
    public OpenRunEcho? Echo { get; init; }

    /// <summary>The host and its operating system.</summary>
    public string? Host { get; init; }

    /// <summary>The application that shows the response.</summary>
    public string? Application { get; init; }

    /// <summary>Its frame cap, frames a second.</summary>
    public double? FrameCapHz { get; init; }

    /// <summary>The screen's refresh rate.</summary>
    public double? RefreshHz { get; init; }

    /// <summary>The state of the device's battery.</summary>
    public string? Battery { get; init; }

    /// <summary>Anything about the room or the set-up.</summary>
    public string? RoomNotes { get; init; }
}
