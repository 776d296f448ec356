namespace Tarry.Statistics.Edges;

/// <summary>A press and what became of it.</summary>
/// <param name="Press">When the press came, in ticks of the recording.</param>
/// <param name="Response">When it was answered; null unless answered or early.</param>
/// <param name="Outcome">What became of it.</param>
/// <param name="Edges">Response edges until the next press or the longest latency, the answer among them.</param>
/// <param name="ActiveAtPress">Whether the response signal was active already.</param>
/// <param name="StrayBefore">Whether a response edge that belongs to no press came since the press before.</param>
public readonly record struct EdgePair(long Press, long? Response, EdgePairOutcome Outcome, int Edges, bool ActiveAtPress, bool StrayBefore);
