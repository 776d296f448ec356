namespace Tarry.Studies.Trials;

/// <summary>One actuation and what came of it, in the ticks that the timer counted.</summary>
/// <param name="Sequence">Its number in the session, from 1; unique.</param>
/// <param name="Segment">Index of the unbroken stretch of the tick counter that it belongs to: a restart of the rig begins the next.</param>
/// <param name="PressTicks">When the contact closed, in ticks of its segment; null where not known (an import without press times).</param>
/// <param name="LatencyTicks">Ticks from press to response; null unless the outcome is a response, or an early one whose time is known.</param>
/// <param name="LatencyHighTicks">The upper bound where the latency is known only as an interval; else null.</param>
/// <param name="Outcome">What came of it.</param>
/// <param name="Flags">What else happened.</param>
/// <param name="Edges">Response edges seen, 255 at most.</param>
public readonly record struct Trial(
    long Sequence,
    int Segment,
    long? PressTicks,
    long? LatencyTicks,
    long? LatencyHighTicks,
    Outcome Outcome,
    TrialFlags Flags,
    int Edges);
