using Tarry.Imports.Recordings;
using Tarry.Statistics.Edges;

namespace Tarry.Imports.ValueChangeDump;

/// <summary>Which channels of a dump are the press and the response, and how their edges are paired.</summary>
public sealed record ValueChangeDumpOptions
{
    /// <summary>The contact's channel: its name, its path with dots, or its identifier; <c>name[3]</c> for one bit. Without it the error says which there are.</summary>
    public string? PressChannel { get; init; }

    /// <summary>The response's channel, named in the same way.</summary>
    public string? ResponseChannel { get; init; }

    /// <summary>Which edge is a press; falling where the contact pulls the line low.</summary>
    public SignalEdge PressEdge { get; init; } = SignalEdge.Rising;

    /// <summary>Which edge is a response.</summary>
    public SignalEdge ResponseEdge { get; init; } = SignalEdge.Rising;

    /// <summary>From which value on a press channel of real numbers is high.</summary>
    public double? PressThreshold { get; init; }

    /// <summary>From which value on a response channel of real numbers is high.</summary>
    public double? ResponseThreshold { get; init; }

    /// <summary>For how long the contact must have been quiet before a press, ms.</summary>
    public double DebounceMs { get; init; } = 5;

    /// <summary>Which response can belong to a press.</summary>
    public PairingWindow Window { get; init; } = PairingWindow.Default;
}
