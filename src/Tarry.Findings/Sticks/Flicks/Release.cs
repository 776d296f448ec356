namespace Tarry.Findings.Sticks.Flicks;

/// <summary>One release from the gate and the rest that followed, in per cent of half the range.</summary>
/// <param name="DirectionX">The x of the direction from which it came, a vector of length 1.</param>
/// <param name="DirectionY">The y.</param>
/// <param name="RestX">Where it came to rest.</param>
/// <param name="RestY">The y.</param>
/// <param name="RestVariance">The variance of the positions there, the mean of both axes.</param>
/// <param name="Overshoot">How far it went past that, in per cent of the way.</param>
/// <param name="Blur">By how much that may be off: it rests on a single position, which noise and rounding move, and on what is taken to lie between reports.</param>
/// <param name="Hidden">Up to where an overshoot would not show.</param>
/// <param name="SettlingMs">From leaving the gate until it stayed within 2 % of the way.</param>
internal readonly record struct Release(double DirectionX, double DirectionY, double RestX, double RestY, double RestVariance, double Overshoot, double Blur, double Hidden, double SettlingMs);
