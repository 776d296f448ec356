namespace Tarry.Findings.Shapes;

/// <summary>Whether the data agree with the fitted shape: Pearson's chi-squared over merged bins.</summary>
/// <param name="ChiSquared">The statistic.</param>
/// <param name="DegreesOfFreedom">Bins less one less the fitted parameters.</param>
/// <param name="P">How likely so poor an agreement is if the shape is right.</param>
public sealed record GoodnessOfFit(double ChiSquared, int DegreesOfFreedom, double P);
