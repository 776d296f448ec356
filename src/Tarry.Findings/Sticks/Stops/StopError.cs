namespace Tarry.Findings.Sticks.Stops;

/// <summary>The angular error at one stop, in degrees.</summary>
/// <param name="Degrees">The stop's true angle, counter-clockwise from right.</param>
/// <param name="Error">The mean direction that the stick says, less the true one: the mean of the sessions' means.</param>
/// <param name="HalfWidth">Half the width of its interval, over sessions where there are several, else over visits, the uncertainty of the stop's angle in it; null for one visit.</param>
/// <param name="Sessions">In how many sessions it was visited.</param>
/// <param name="Visits">How often it was visited.</param>
public sealed record StopError(double Degrees, double Error, double? HalfWidth, int Sessions, int Visits)
{
    /// <summary>The direction that the stick says, from 0 up to 360.</summary>
    public double Said => (((Degrees + Error) % 360) + 360) % 360;
}
