namespace Tarry.Statistics.Distributions;

/// <summary>The noncentral t distribution: (Z + d)/S, Z standard normal and S an independent chi(v)/sqrt(v). The law of a t statistic where there is a difference.</summary>
/// <remarks>
/// P(T &lt;= t) = E Phi(t S - d), by composite Gauss-Legendre over the law of S; the error is below 1e-11 for 1 to 10,000
/// degrees of freedom.
/// </remarks>
public static class NoncentralStudentDistribution
{
    /// <summary>The probability of a value at or below <paramref name="t"/>.</summary>
    /// <param name="t">The value.</param>
    /// <param name="degreesOfFreedom">Above 0 and finite.</param>
    /// <param name="noncentrality">The mean of the numerator in its standard deviations.</param>
    /// <exception cref="ArgumentOutOfRangeException">The degrees of freedom are not above 0 and finite.</exception>
    public static double Cdf(double t, double degreesOfFreedom, double noncentrality) =>
        ScaleLaw.Expectation(scale => NormalDistribution.Cdf((t * scale) - noncentrality), degreesOfFreedom, 0, double.PositiveInfinity);

    /// <summary>The probability of a value above <paramref name="t"/>.</summary>
    /// <inheritdoc cref="Cdf"/>
    public static double UpperTail(double t, double degreesOfFreedom, double noncentrality) => Cdf(-t, degreesOfFreedom, -noncentrality);
}
