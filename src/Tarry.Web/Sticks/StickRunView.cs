using Tarry.Rig.Sticks.Recording;

namespace Tarry.Web.Sticks;

/// <summary>A recording of a stick at one moment, the same for all windows.</summary>
/// <param name="Card">What is recorded.</param>
/// <param name="Standing">How it stands.</param>
/// <param name="Progress">Where it is; null before its first word.</param>
/// <param name="Trail">The newest positions; null before the first.</param>
/// <param name="Said">What the sealed recording says; null before.</param>
/// <param name="IsComplete">Whether all steps were done, of one that has ended.</param>
/// <param name="Problem">Why it failed; null where it did not.</param>
public sealed record StickRunView(
    StickCard Card, StickRunStanding Standing, StickProgress? Progress, StickTrail? Trail, StickSaid? Said, bool IsComplete, Exception? Problem)
{
    /// <summary>Whether it still records or is being sealed.</summary>
    public bool IsOn => Standing is StickRunStanding.Recording or StickRunStanding.Ending;
}
