namespace Tarry.Statistics.Uncertainty;

/// <summary>Standard uncertainties from knowledge other than repeated observations.</summary>
/// <remarks>
/// From limits +-a: a/sqrt(3) rectangular (JCGM 100:2008, 4.3.7), a/sqrt(6) triangular (4.3.9), a/sqrt(2) arcsine (H.1.3.4).
/// Degrees of freedom of an uncertainty that is itself known to a relative r: 1/(2 r^2) (G.4.2, equation G.3).
/// </remarks>
public static class TypeB
{
    /// <summary>The number by which half the distance of the limits is divided.</summary>
    /// <exception cref="ArgumentOutOfRangeException">There is no such distribution.</exception>
    public static double Divisor(UncertaintyDistribution distribution) => distribution switch
    {
        UncertaintyDistribution.Normal => 1,
        UncertaintyDistribution.Rectangular => Math.Sqrt(3),
        UncertaintyDistribution.Triangular => Math.Sqrt(6),
        UncertaintyDistribution.Arcsine => Math.Sqrt(2),
        _ => throw new ArgumentOutOfRangeException(nameof(distribution), distribution, "Name one of the distributions."),
    };

    /// <summary>The standard uncertainty that limits give.</summary>
    /// <param name="halfWidth">Half the distance of the limits, not negative; for a normal one its standard uncertainty.</param>
    /// <param name="distribution">How the quantity is distributed between them.</param>
    /// <exception cref="ArgumentOutOfRangeException">The half-width is negative or not finite.</exception>
    public static double StandardUncertainty(double halfWidth, UncertaintyDistribution distribution)
    {
        Argument.RequireNotNegative(halfWidth, nameof(halfWidth));
        return halfWidth / Divisor(distribution);
    }

    /// <summary>The degrees of freedom of an uncertainty that may itself be wrong by a share of it.</summary>
    /// <param name="relativeUncertainty">That share, above 0: a quarter gives 8.</param>
    /// <exception cref="ArgumentOutOfRangeException">The share is not above 0.</exception>
    public static double DegreesOfFreedom(double relativeUncertainty)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(relativeUncertainty);
        return 0.5 / (relativeUncertainty * relativeUncertainty);
    }
}
