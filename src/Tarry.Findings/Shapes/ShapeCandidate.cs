using Tarry.Statistics.Shapes;

namespace Tarry.Findings.Shapes;

/// <summary>One family that was fitted, and how well it did.</summary>
/// <param name="Family">The family.</param>
/// <param name="Bic">Bayesian information criterion, -2 ln L + k ln n; lower is better, and only differences mean something.</param>
/// <param name="Parameters">How many parameters were fitted, k.</param>
public sealed record ShapeCandidate(ShapeFamily Family, double Bic, int Parameters);
