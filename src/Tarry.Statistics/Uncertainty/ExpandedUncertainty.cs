using Tarry.Statistics.Distributions;

namespace Tarry.Statistics.Uncertainty;

/// <summary>A combined standard uncertainty and the half-width about the result that holds the true value at a level.</summary>
/// <remarks>
/// U = k u_c with k = t of the effective degrees of freedom, u_c^4 / sum of (c_i u_i)^4 / v_i (Welch-Satterthwaite; JCGM 100:2008,
/// G.4.1 equation G.2b), cut to a whole number below (G.6.4). Assumes independent inputs and a result near to normal; one
/// dominant rectangular input makes it too wide, never too narrow.
/// </remarks>
/// <param name="Standard">The combined standard uncertainty u_c.</param>
/// <param name="DegreesOfFreedom">The effective degrees of freedom, not cut; may be infinite.</param>
/// <param name="CoverageFactor">The coverage factor k.</param>
/// <param name="Level">The level, such as 0.95.</param>
public sealed record ExpandedUncertainty(double Standard, double DegreesOfFreedom, double CoverageFactor, double Level)
{
    /// <summary>The expanded uncertainty U.</summary>
    public double Expanded => CoverageFactor * Standard;

    /// <summary>From independent inputs.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The level is not strictly between 0 and 1, or degrees of freedom are not above 0.</exception>
    public static ExpandedUncertainty Of(ReadOnlySpan<UncertaintyComponent> components, double level = 0.95)
    {
        Argument.RequireLevel(level, nameof(level));
        var standard = LawOfPropagation.Combine(components);
        var degrees = EffectiveDegreesOfFreedom(components, standard);
        var whole = degrees >= 1 ? Math.Floor(degrees) : degrees;
        return new ExpandedUncertainty(standard, degrees, StudentDistribution.Quantile((1 + level) / 2, whole), level);
    }

    private static double EffectiveDegreesOfFreedom(ReadOnlySpan<UncertaintyComponent> components, double standard)
    {
        double sum = 0;
        foreach (var component in components)
        {
            Argument.RequireDegreesOfFreedom(component.DegreesOfFreedom, nameof(components));
            var share = standard > 0 ? component.Contribution / standard : 0;
            sum += share * share * share * share / component.DegreesOfFreedom;
        }

        return sum > 0 ? 1 / sum : double.PositiveInfinity;
    }
}
