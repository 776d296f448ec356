using System.Globalization;
using Tarry.Metrology;
using Tarry.Rig.Frames;
using Tarry.Studies.Sessions;
using Tarry.Studies.Trials;

namespace Tarry.Rig.Runs;

/// <summary>Counts what was recorded: of the session for people, of the rig's present run to compare with its own counts.</summary>
internal sealed class RunTally(LatencyCounts? latencies = null)
{
    private long inRun;
    private long responsesInRun;
    private long missedInRun;
    private long earlyInRun;

    public WithinSessionPrecision Precision { get; } = new();

    public long Responses { get; private set; }

    public long Missed { get; private set; }

    public long Early { get; private set; }

    public long Refused { get; private set; }

    /// <summary>Counts a trial of the present run; a latency counts from the crossing of the axis, where there is one.</summary>
    public void Add(Trial trial, Segment segment, RunSettings? run)
    {
        inRun++;
        switch (trial.Outcome)
        {
            case Outcome.Response:
                Responses++;
                responsesInRun++;
                var latencyMs = new TimerClock(segment.TickHz).ToMicroseconds(trial.LatencyTicks!.Value - (run?.CrossingTicks(segment.TickHz) ?? 0)) / 1000;
                Precision.Add(latencyMs);
                latencies?.Add(latencyMs);
                break;
            case Outcome.Missed:
                Missed++;
                missedInRun++;
                break;
            case Outcome.Early:
                Early++;
                earlyInRun++;
                break;
            default:
                Refused++;
                break;
        }
    }

    /// <summary>The rig begins to count from nothing.</summary>
    public void BeginRun() => inRun = responsesInRun = missedInRun = earlyInRun = 0;

    /// <summary>How the rig's counts differ from what was recorded of its run; null if they do not.</summary>
    public string? Difference(RunEndFrame rig) =>
        (rig.Total, rig.Responses, rig.Missed, rig.Early) == (inRun, responsesInRun, missedInRun, earlyInRun)
            ? null
            : string.Create(
                CultureInfo.InvariantCulture,
                $"the rig's counts do not agree: it counted {rig.Total} trials ({rig.Responses} responses, {rig.Missed} missed, {rig.Early} early), recorded are {inRun} ({responsesInRun}, {missedInRun}, {earlyInRun})");
}
