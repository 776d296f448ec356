namespace Tarry.Studies.Sessions;

/// <summary>What the pings of one segment said of the rig's clock against the host's.</summary>
/// <param name="RateErrorPpm">How much faster than stated the rig's timer runs, in parts per million.</param>
/// <param name="StandardUncertaintyPpm">The standard uncertainty of that.</param>
/// <param name="Pings">How many pings the fit used.</param>
/// <param name="SpanSeconds">How long the pings spanned.</param>
public sealed record ClockFitRecord(double RateErrorPpm, double StandardUncertaintyPpm, int Pings, double SpanSeconds);
