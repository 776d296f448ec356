using Tarry.Imports.Recordings;
using Tarry.Statistics.Edges;

namespace Tarry.Imports.Audio;

/// <summary>Which channel of a sound recording is the press and which the response, and how they are paired.</summary>
public sealed record TwoChannelOptions
{
    /// <summary>The channel of the press, from 1: its click, or its contact.</summary>
    public int PressChannel { get; init; } = 1;

    /// <summary>The channel of the response, from 1.</summary>
    public int ResponseChannel { get; init; } = 2;

    /// <summary>What the response is.</summary>
    public SignalKind Response { get; init; } = SignalKind.Light;

    /// <summary>Whether the response makes its signal larger or smaller; of a light only.</summary>
    public SignalEdge ResponseEdge { get; init; } = SignalEdge.Rising;

    /// <summary>For how long after a press further clicks are its bounces or its release, ms.</summary>
    public double DebounceMs { get; init; } = 60;

    /// <summary>The calibrated corner of a capacitor in the response channel's input, Hz; null for none.</summary>
    public double? CouplingCornerHz { get; init; }

    /// <summary>Which response can belong to a press.</summary>
    public PairingWindow Window { get; init; } = PairingWindow.Default;

    /// <summary>A folder for a picture of each doubtful pairing; null for none.</summary>
    public string? Pictures { get; init; }
}
