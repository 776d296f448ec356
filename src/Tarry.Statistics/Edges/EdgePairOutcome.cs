namespace Tarry.Statistics.Edges;

/// <summary>What became of a press in a recording of two signals.</summary>
public enum EdgePairOutcome
{
    /// <summary>One response edge can belong to it.</summary>
    Answered,

    /// <summary>No response edge within the longest latency.</summary>
    Missed,

    /// <summary>The first response edge came before the shortest latency.</summary>
    Early,

    /// <summary>A response edge came that can belong to it or to another press.</summary>
    Ambiguous,

    /// <summary>The response signal was unknown before a response and before the longest latency.</summary>
    SignalLost,

    /// <summary>The recording ended before a response and before the longest latency.</summary>
    RecordingEnded,
}
