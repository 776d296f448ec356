using Tarry.Findings.Quality;
using Tarry.Rig.Runs;

namespace Tarry.Web.Bench;

/// <summary>A run at one moment, the same for all windows.</summary>
/// <param name="Card">What is captured.</param>
/// <param name="Standing">How it stands.</param>
/// <param name="Progress">Where the capture stands; null before its first word.</param>
/// <param name="Shape">The latencies so far; null before the first.</param>
/// <param name="Newest">The newest latencies in milliseconds, oldest first.</param>
/// <param name="Cautions">What stands out so far.</param>
/// <param name="LookedAt">How many trials the cautions rest on; 0 before the first look.</param>
/// <param name="Problem">Why it failed; null where it did not.</param>
/// <param name="Events">What happened in the session, of one that is sealed.</param>
/// <param name="Remaining">How long it will still take in real time; null if there is no end or nothing to estimate from.</param>
public sealed record RunView(
    RunCard Card,
    RunStanding Standing,
    RunProgress? Progress,
    LatencyShape? Shape,
    IReadOnlyList<double> Newest,
    IReadOnlyList<Caution> Cautions,
    long LookedAt,
    Exception? Problem,
    IReadOnlyList<string> Events,
    TimeSpan? Remaining)
{
    /// <summary>Trials on the disk.</summary>
    public long Captured => Progress?.CapturedOnDisk ?? 0;

    /// <summary>Trials that came and are not on the disk yet: captured and these are all that came.</summary>
    public long BeingWritten => Progress is { } now ? now.Responses + now.Missed + now.Early + now.Refused - now.CapturedOnDisk : 0;

    /// <summary>How much of the target is done, from 0 to 1; null without a target or with nothing to tell it from.</summary>
    /// <remarks>A half-width shrinks as 1 / sqrt(trials), so its square says how much of the work is left.</remarks>
    public double? Done
    {
        get
        {
            var trials = Card.Asked.Trials is { } wanted ? (double)Captured / wanted : (double?)null;
            var precision = Card.Asked.HalfWidthMs is { } goal && Progress?.HalfWidthMs is { } now and > 0 ? goal / now * (goal / now) : (double?)null;
            return Standing == RunStanding.Sealed ? 1
                : trials is null && precision is null ? null
                : Math.Min(1, Math.Max(trials ?? 0, precision ?? 0));
        }
    }
}
