namespace Tarry.Findings.Sticks.Stops;

/// <summary>The angular error at one stop, in degrees.</summary>
/// <param name="Degrees">The stop's true angle, counter-clockwise from right.</param>
/// <param name="Error">The mean direction that the stick says, less the true one.</param>
/// <param name="HalfWidth">Half the width of its interval, the uncertainty of the stop's angle in it; null for one visit.</param>
/// <param name="Visits">How often it was visited.</param>
public sealed record StopError(double Degrees, double Error, double? HalfWidth, int Visits);
