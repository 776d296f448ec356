namespace Tarry.Findings.Sticks.Stops;

/// <summary>The visits to the stops in one session.</summary>
/// <param name="Stops">By true angle, the error of each visit, in degrees.</param>
/// <param name="Uncertainty">The standard uncertainty of a stop's angle, in degrees.</param>
internal sealed record SessionStops(IReadOnlyList<(double Degrees, IReadOnlyList<double> Errors)> Stops, double Uncertainty);
