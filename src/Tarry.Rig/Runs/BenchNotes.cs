namespace Tarry.Rig.Runs;

/// <summary>What the user says of the bench. All of it is optional.</summary>
public sealed record BenchNotes
{
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
