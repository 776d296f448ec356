using Tarry.Imports.Recordings;
using Tarry.Statistics.Edges;

namespace Tarry.Imports.Video;

/// <summary>Which columns of a brightness table are the press and the response, and how fast the camera was.</summary>
public sealed record VideoOptions
{
    /// <summary>Frames a second with which the camera captured: the time stamps of slow motion say something else.</summary>
    public required double CaptureFps { get; init; }

    /// <summary>The column of the press: a lamp at the contact, or the finger.</summary>
    public string PressColumn { get; init; } = "press";

    /// <summary>The column of the response.</summary>
    public string ResponseColumn { get; init; } = "response";

    /// <summary>The column of the frames' time stamps.</summary>
    public string TimeColumn { get; init; } = "pts_time";

    /// <summary>Whether the press makes its region brighter or darker.</summary>
    public SignalEdge PressEdge { get; init; } = SignalEdge.Rising;

    /// <summary>Whether the response makes its region brighter or darker.</summary>
    public SignalEdge ResponseEdge { get; init; } = SignalEdge.Rising;

    /// <summary>The brightness from which the press counts; null for the middle between dark and bright.</summary>
    public double? PressThreshold { get; init; }

    /// <summary>The brightness from which the response counts; null for the middle between dark and bright.</summary>
    public double? ResponseThreshold { get; init; }

    /// <summary>The character between cells; null to take the one that the header has most of.</summary>
    public char? Delimiter { get; init; }

    /// <summary>Whether numbers are written 1,5.</summary>
    public bool DecimalComma { get; init; }

    /// <summary>Which response can belong to a press.</summary>
    public PairingWindow Window { get; init; } = PairingWindow.Default;
}
