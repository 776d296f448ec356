namespace Tarry.Studies.Trials;

/// <summary>What every trial must hold to.</summary>
internal static class TrialRules
{
    /// <summary>What is wrong with a trial, in words; null if nothing is.</summary>
    public static string? Broken(Trial trial, int segments) => trial switch
    {
        { Sequence: < 1 } => $"the sequence number {trial.Sequence} is less than 1",
        _ when trial.Segment < 0 || trial.Segment >= segments => $"the segment {trial.Segment} is not one of the session's {segments}",
        { PressTicks: < 0 } => $"the press time {trial.PressTicks} is negative",
        { LatencyTicks: < 0 } => $"the latency {trial.LatencyTicks} is negative",
        { Outcome: < Outcome.Response or > Outcome.Refused } => $"the outcome {(int)trial.Outcome} is not one",
        { Outcome: Outcome.Response, LatencyTicks: null } => "a response has no latency",
        { Outcome: Outcome.Missed or Outcome.Refused, LatencyTicks: not null } => "a trial without a response has a latency",
        { LatencyHighTicks: not null, LatencyTicks: null } => "there is an upper bound of the latency and no lower",
        _ when trial.LatencyHighTicks < trial.LatencyTicks => $"the latency's upper bound {trial.LatencyHighTicks} is below its lower {trial.LatencyTicks}",
        { Flags: < 0 or > (TrialFlags)255 } => $"the flags {(int)trial.Flags} are out of range 0 to 255",
        { Edges: < 0 or > 255 } => $"the number of edges {trial.Edges} is out of range 0 to 255",
        _ => null,
    };
}
