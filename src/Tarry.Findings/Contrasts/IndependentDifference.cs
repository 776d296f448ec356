using Tarry.Statistics.Comparisons;
using Tarry.Statistics.Distributions;

namespace Tarry.Findings.Contrasts;

/// <summary>
/// The difference of two independent estimates, each with a standard error on its own degrees of freedom.
/// </summary>
/// <remarks>
/// SE^2 = SE_a^2 + SE_b^2, df = SE^4 / (SE_a^4 / df_a + SE_b^4 / df_b): B. L. Welch, Biometrika 34, 1947; F. E. Satterthwaite,
/// Biometrics Bulletin 2, 1946; GUM G.4.1.
/// </remarks>
internal sealed record IndependentDifference
{
    public IndependentDifference(double a, double errorOfA, double degreesOfA, double b, double errorOfB, double degreesOfB)
    {
        var (partA, partB) = (errorOfA * errorOfA, errorOfB * errorOfB);
        var denominator = (partA * partA / degreesOfA) + (partB * partB / degreesOfB);
        Value = a - b;
        StandardError = Math.Sqrt(partA + partB);
        DegreesOfFreedom = denominator > 0 ? (partA + partB) * (partA + partB) / denominator : Math.Min(degreesOfA, degreesOfB);
    }

    public double Value { get; }

    public double StandardError { get; }

    public double DegreesOfFreedom { get; }

    public double P => StandardError > 0
        ? StudentDistribution.TwoSidedP(Value / StandardError, DegreesOfFreedom)
        : Value == 0 ? 1 : 0;

    public double MinimumDetectable => MinimumDetectableDifference.Of(StandardError, DegreesOfFreedom);

    /// <summary>Half the width of the interval of this level.</summary>
    public double HalfWidth(double level) => StudentDistribution.Quantile((1 + level) / 2, DegreesOfFreedom) * StandardError;
}
