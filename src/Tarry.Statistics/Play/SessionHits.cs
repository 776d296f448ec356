namespace Tarry.Statistics.Play;

/// <summary>How often the presses of one session hit with a given compensation.</summary>
/// <param name="Share">The mean probability to hit over its presses.</param>
/// <param name="VarianceOfShare">The variance of that mean as independent presses have it.</param>
/// <param name="Presses">How many presses.</param>
public readonly record struct SessionHits(double Share, double VarianceOfShare, int Presses);
