namespace Tarry.Findings.Conditions;

/// <summary>The share of presses that were answered by a latency, thinned for a figure; it ends below 1 where presses were missed.</summary>
/// <param name="Points">Points of the empirical distribution function, ascending.</param>
/// <param name="Presses">How many presses it rests on, misses included.</param>
/// <param name="HalfHeight">Half the height of the confidence band for the whole curve, from 0 to 1: <see cref="Statistics.Quantiles.DistributionBand"/>.</param>
/// <param name="Level">The level of the band.</param>
public sealed record DistributionCurve(IReadOnlyList<DistributionPoint> Points, int Presses, double HalfHeight, double Level);
