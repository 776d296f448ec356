using Tarry.Reports.Wording;
using Tarry.Rig.Sticks.Recording;
using Tarry.Studies.Sticks;
using Tarry.Web.Bench;

namespace Tarry.Web.Sticks;

/// <summary>What is said in words of a recording of a stick.</summary>
public static class StickRunWording
{
    /// <summary>How it stands, in a few words.</summary>
    public static string Standing(StickRunView run)
    {
        ArgumentNullException.ThrowIfNull(run);
        return run.Standing switch
        {
            StickRunStanding.Ending => "Sealing",
            StickRunStanding.Sealed => run.IsComplete ? "Sealed" : "Sealed before its last step",
            StickRunStanding.Empty => "Nothing was kept",
            StickRunStanding.Discarded => "Discarded",
            StickRunStanding.Failed => "Stopped by a fault",
            _ => run.Progress switch
            {
                null => "Looking for the rig",
                { Number: 0 } => "Get ready",
                var progress => $"Recording, step {Numbers.Whole(progress.Number)} of {Numbers.Whole(progress.Prompts.Count)}",
            },
        };
    }

    /// <summary>What to do now, as a sentence begins.</summary>
    public static string Prompt(StickProgress progress)
    {
        ArgumentNullException.ThrowIfNull(progress);
        return Capital(progress.Now.Text);
    }

    /// <summary>For how long still.</summary>
    public static string Left(StickProgress progress)
    {
        ArgumentNullException.ThrowIfNull(progress);
        return BenchWording.Remaining(TimeSpan.FromSeconds(progress.SecondsLeft));
    }

    /// <summary>What is read out: anew at each step and at the end, never at a count.</summary>
    public static string Announcement(StickRunView run)
    {
        ArgumentNullException.ThrowIfNull(run);
        return run is { Standing: StickRunStanding.Recording, Progress: { } progress }
            ? progress.Number == 0 ? $"{Standing(run)}. First: {progress.Now.Text}." : $"{Prompt(progress)}. {Numbers.Plain(Math.Round(progress.Now.Seconds))} seconds."
            : $"{run.Card.Key}: {Standing(run)}.";
    }

    /// <summary>The trail for who does not see the figure.</summary>
    public static string Trail(StickTrail trail)
    {
        ArgumentNullException.ThrowIfNull(trail);
        var ((leastX, greatestX), (leastY, greatestY)) = (trail.SpanX, trail.SpanY);
        return $"The last {Numbers.Plain(Math.Round(trail.Seconds))} s: x from {Percent(leastX)} to {Percent(greatestX)}, y from {Percent(leastY)} to {Percent(greatestY)} % of half the range.";
    }

    /// <summary>A procedure in a list: its name, and whether the session is there already.</summary>
    public static string Choice(StickProcedure procedure, bool isSealed) => StickProcedures.Name(procedure) + (isSealed ? " (sealed)" : "");

    private static string Percent(double value) => Numbers.Fixed(value, 0);

    private static string Capital(string text) => char.ToUpperInvariant(text[0]) + text[1..];
}
