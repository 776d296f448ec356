namespace Tarry.Studies.Sticks;

/// <summary>The range that an axis can say.</summary>
/// <param name="Minimum">The least count.</param>
/// <param name="Maximum">The greatest count, above the least.</param>
/// <param name="Step">The step between neighbouring counts, such as 1; null where the positions are not whole counts and the step is not stated.</param>
public sealed record StickRange(double Minimum, double Maximum, double? Step);
