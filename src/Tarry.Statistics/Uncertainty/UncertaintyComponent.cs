namespace Tarry.Statistics.Uncertainty;

/// <summary>One input quantity's part in the uncertainty of a result.</summary>
/// <param name="StandardUncertainty">The input's standard uncertainty, in its own unit, not negative.</param>
/// <param name="Sensitivity">How far the result moves for one unit of the input.</param>
/// <param name="DegreesOfFreedom">How well the uncertainty is known; may be infinite.</param>
public readonly record struct UncertaintyComponent(double StandardUncertainty, double Sensitivity, double DegreesOfFreedom)
{
    /// <summary>The part in the result's unit, with the sign of the sensitivity.</summary>
    public double Contribution => Sensitivity * StandardUncertainty;
}
