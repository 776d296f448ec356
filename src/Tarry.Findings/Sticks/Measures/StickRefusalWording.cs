using static System.FormattableString;

namespace Tarry.Findings.Sticks.Measures;

/// <summary>Why recordings cannot support a measure, and what to do about it.</summary>
public static class StickRefusalWording
{
    /// <summary>The reason's key in JSON, such as <c>too-few-turns</c>.</summary>
    /// <param name="reason">The reason.</param>
    public static string Key(StickRefusalReason reason) => Hyphenated.Name(reason.ToString());

    /// <summary>A sentence of what is wrong and one of what to do.</summary>
    /// <param name="refusal">The refusal.</param>
    public static string Sentence(StickRefusal refusal)
    {
        ArgumentNullException.ThrowIfNull(refusal);
        var (have, need) = (refusal.Have, refusal.Need);
        return refusal.Reason switch
        {
            StickRefusalReason.NotRecorded => "No session shows it. Record one of the procedure that does.",
            StickRefusalReason.TooFewPositions => Invariant($"{have:0} positions of {need:0}. Record longer."),
            StickRefusalReason.TooShort => Invariant($"{have:0.#} s of {need:0} s. Record longer."),
            StickRefusalReason.TooFewTurns => Invariant($"{have:0.##} turns of {need:0}. Turn the stick along its gate, three whole turns or more each way."),
            StickRefusalReason.OneWayOnly => "Whole turns one way only. Turn the stick both ways.",
            StickRefusalReason.TooFast => Invariant($"{have:0} positions a turn leave parts of the circle without any, or a direction with too few. Turn more slowly: {need:0} positions a turn or more."),
            StickRefusalReason.CutOff => Invariant($"The circle is cut off over {have:0} degrees, at the end of the range or before it. Record where nothing is cut: without the layer, or with its scale lowered."),
            StickRefusalReason.TooFewReleases => Invariant($"{have:0} releases of {need:0}. Push to the gate, let go, wait half a second, and again."),
            StickRefusalReason.TooFewDirections => "Releases from one direction only. Flick in several directions.",
            StickRefusalReason.TooFewStops => Invariant($"{have:0} stops of {need:0}. Hold the stick against more stops of known angle."),
            StickRefusalReason.TooFewVisits => Invariant($"{have:0} visits of the least visited stop of {need:0}. Go round the stops again."),
            StickRefusalReason.NoStimulus => "The true positions are not known. Record the stimulus beside the positions.",
            StickRefusalReason.TooFewPasses => Invariant($"{have:0} passes from end to end of {need:0}. Sweep the axis slowly there and back, twice or more."),
            StickRefusalReason.NoPassBack => "Passes one way only. Sweep the axis there and back.",
            StickRefusalReason.TooFewAStep => Invariant($"{have:0.#} positions a step of {need:0}. Sweep more slowly, with a finer stimulus."),
            StickRefusalReason.NoStep => "The axis shows no step and none is stated. State its step, or move so slowly that neighbouring positions are visited.",
            StickRefusalReason.NothingMoves => "Every position is one and the same: rounding or a dead zone hides the noise. Record the stick held still off its centre, in a jig.",
            StickRefusalReason.StopsDisagree => "The directions of the stick do not go with the stops. Look whether y grows upwards, x and y are exchanged, angles are in degrees from the right and counter-clockwise, and record or import again.",
            StickRefusalReason.NotAtRest => Invariant($"The stick moved over {have:0} % of the range, where {need:0} % may be rest. Record it with nobody touching it."),
            StickRefusalReason.StepNotShown => "Every position is one and the same, and no motion shows how coarse the axis is. Record slow turns of the stick too.",
            StickRefusalReason.OtherAxisUnknown => "Whether the other axis stood still is not known. Record its level too, held still.",
            StickRefusalReason.TooFewJumps => Invariant($"{have:0} jumps of {need:0} with an answer. Let the level jump and hold, more often."),
            StickRefusalReason.NoGrid => "Reports do not come on a grid. Record where the stick moves all the time.",
            StickRefusalReason.TooFewReplicates => "One replicate gives no interval. Repeat it, in this session or another.",
            _ => throw new ArgumentOutOfRangeException(nameof(refusal), refusal, "A reason without words."),
        };
    }
}
