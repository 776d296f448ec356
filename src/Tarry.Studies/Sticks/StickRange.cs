namespace Tarry.Studies.Sticks;

/// <summary>The range that an axis can say.</summary>
/// <param name="Minimum">The least count.</param>
/// <param name="Maximum">The greatest count, above the least.</param>
/// <param name="Step">The step between neighbouring counts, such as 1; null where the positions are not whole counts and the step is not stated.</param>
public sealed record StickRange(double Minimum, double Maximum, double? Step)
{
    internal string? Broken(string axis) => this switch
    {
        _ when !double.IsFinite(Minimum) || !double.IsFinite(Maximum) || !(Minimum < Maximum) => FormattableString.Invariant($"the range of {axis} from {Minimum} to {Maximum} is none"),
        { Step: { } step } when !(double.IsFinite(step) && step > 0) => FormattableString.Invariant($"the step of {axis} is {step}, and must be more than 0"),
        _ => null,
    };
}
