namespace Tarry.Studies.Calibrations;

/// <summary>The light thresholds between which the sensor answers, in 1/256 of the supply.</summary>
/// <param name="From">The least that answers: the light when dark is below it.</param>
/// <param name="To">The greatest that answers: the light when bright is above it.</param>
public sealed record ThresholdRange(int From, int To);
