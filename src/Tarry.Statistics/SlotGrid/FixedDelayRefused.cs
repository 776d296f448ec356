namespace Tarry.Statistics.SlotGrid;

/// <summary>No fixed delay is claimed of a series.</summary>
/// <param name="Reason">Why.</param>
/// <param name="StandardErrorMs">The standard error that it would have, in milliseconds; null where it was not fitted.</param>
/// <param name="BlurMs">The standard deviation of the jitter of frames and slots; null where it was not fitted.</param>
/// <param name="Trials">How many presses the series has.</param>
public sealed record FixedDelayRefused(FixedDelayReason Reason, double? StandardErrorMs, double? BlurMs, int Trials) : FixedDelayOutcome(Trials);
