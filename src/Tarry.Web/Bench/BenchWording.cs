using Tarry.Reports.Wording;
using Tarry.Rig.Runs;

namespace Tarry.Web.Bench;

/// <summary>What the bench says in words.</summary>
public static class BenchWording
{
    private const int TenthsOfAll = 10;
    private const long TrialsWithoutATarget = 1000;

    /// <summary>How a run stands, in a few words.</summary>
    public static string Standing(RunView run)
    {
        ArgumentNullException.ThrowIfNull(run);
        return run.Standing switch
        {
            RunStanding.Stopping => "Stopping after the trial in flight",
            RunStanding.Paused => "Paused",
            RunStanding.Failed => "Stopped by a fault",
            RunStanding.Sealed => "Sealed",
            _ => run.Progress?.Phase switch
            {
                null or RunPhase.Connecting => "Looking for the rig",
                RunPhase.Configuring => "Setting the rig",
                RunPhase.WaitingForRig => "The rig is gone; waiting for it to come back",
                RunPhase.Sealing => "Sealing",
                RunPhase.Stopping => "Taking the last trial",
                _ => "Capturing",
            },
        };
    }

    /// <summary>What is read out as a run goes on: anew at each tenth of its target, when it stands otherwise, and when a caution comes up.</summary>
    public static string Announcement(RunView run)
    {
        ArgumentNullException.ThrowIfNull(run);
        var standing = $"{run.Card.Key}: {Standing(run)}.";
        var cautions = run.Cautions.Count == 0 ? "" : $" {Numbers.Count(run.Cautions.Count, "caution")}.";
        return run.Standing is not RunStanding.Running ? $"{standing} {Numbers.Count(run.Captured, "trial")} on the disk.{cautions}"
            : run.Done is { } done ? $"{standing} {Math.Floor(done * TenthsOfAll) / TenthsOfAll:0 %} of the target.{cautions}"
            : run.Captured < TrialsWithoutATarget ? $"{standing}{cautions}"
            : $"{standing} More than {Numbers.Whole(run.Captured / TrialsWithoutATarget * TrialsWithoutATarget)} trials.{cautions}";
    }

    /// <summary>What a run aims at.</summary>
    public static string Target(RunCard card)
    {
        ArgumentNullException.ThrowIfNull(card);
        return card.Asked switch
        {
            { Trials: { } trials } => Numbers.Count(trials, "trial"),
            { HalfWidthMs: { } halfWidth } => $"the mean to \u00B1{Numbers.Milliseconds(halfWidth)}",
            _ => "until you stop it",
        };
    }

    /// <summary>A time that remains, rounded as a person would say it.</summary>
    public static string Remaining(TimeSpan? time) => time switch
    {
        null => "",
        { TotalSeconds: < 60 } under => $"{Math.Ceiling(under.TotalSeconds):0} s",
        { TotalHours: < 1 } minutes => $"{Math.Ceiling(minutes.TotalMinutes):0} min",
        { } hours => $"{Math.Floor(hours.TotalHours):0} h {hours.Minutes:0} min",
    };

    /// <summary>The shape of the latencies for who does not see the figure.</summary>
    public static string Shape(LatencyShape shape, string? reference)
    {
        ArgumentNullException.ThrowIfNull(shape);
        var peak = shape.Shares.Select((share, index) => (share, index)).MaxBy(pair => pair.share).index;
        var from = shape.FromMs + (peak * shape.ClassMs);
        var text = $"{Numbers.Count(shape.Count, "response")} in classes of {Numbers.Milliseconds(shape.ClassMs)}; the fullest, {Numbers.Plain(from)} to {Numbers.Milliseconds(from + shape.ClassMs)}, holds {shape.Shares[peak]:0.0 %}; the latest came after {Numbers.Milliseconds(shape.LatestMs)}.";
        if (reference is null || shape.ReferenceShares is not { } shares)
        {
            return text;
        }

        var referencePeak = shape.FromMs + (shares.Select((share, index) => (share, index)).MaxBy(pair => pair.share).index * shape.ClassMs);
        return $"{text} The fullest class of {reference} begins at {Numbers.Milliseconds(referencePeak)}.";
    }
}
