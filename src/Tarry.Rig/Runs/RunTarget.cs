namespace Tarry.Rig.Runs;

/// <summary>When a run has enough, and how long that will take.</summary>
internal sealed class RunTarget(RunRequest request)
{
    /// <summary>A half-width reached sooner is chance: below this many trials a run never stops on it.</summary>
    public const long FewestTrials = 200;

    /// <summary>Whether the session has enough.</summary>
    public bool IsReached(long trials, RunTally tally) =>
        trials >= request.Trials
        || (trials >= FewestTrials && tally.Precision.HalfWidthMs <= request.HalfWidthMs);

    /// <summary>How many trials the rig is to make on its own; 0 until stopped.</summary>
    public long Count(long trials) => request.Trials - trials ?? 0;

    /// <summary>How long it will still take; null if there is no end or nothing to go by.</summary>
    /// <remarks>A half-width shrinks as 1 / sqrt(trials).</remarks>
    public TimeSpan? Remaining(long trials, RunTally tally)
    {
        var needed = request.Trials ?? double.PositiveInfinity;
        if (request.HalfWidthMs is { } goal && tally.Precision.HalfWidthMs is { } now)
        {
            needed = Math.Min(needed, Math.Max(FewestTrials, trials * (now / goal) * (now / goal)));
        }

        var settings = request.Settings;
        var perTrialUs = Math.Max(
            (settings.IntervalMinUs + settings.IntervalMaxUs) / 2.0,
            Math.Max(settings.HoldUs, 0) + settings.RearmUs);
        var seconds = Math.Max(0, needed - trials) * perTrialUs / 1e6;
        return seconds < TimeSpan.MaxValue.TotalSeconds ? TimeSpan.FromSeconds(seconds) : null;
    }
}
