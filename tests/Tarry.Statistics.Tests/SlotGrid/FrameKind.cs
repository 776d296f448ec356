namespace Tarry.Statistics.Tests.SlotGrid;

/// <summary>How the frames of a simulated chain stand in time.</summary>
public enum FrameKind
{
    /// <summary>There are none.</summary>
    None,

    /// <summary>A stable grid; a response takes the next place of the grid, and shows early or late by the jitter.</summary>
    Shown,

    /// <summary>A stable grid, each frame early or late by the jitter; a response takes the next frame as it came.</summary>
    Jittered,

    /// <summary>Each frame comes one interval and the jitter after the last: the grid walks away.</summary>
    Walking,

    /// <summary>A uniform wait, on no grid.</summary>
    FreeRunning,
}
