namespace Tarry.Statistics.Censoring;

/// <summary>A value of which only an interval is known: more than the low bound, at most the high one; exact where they are equal.</summary>
/// <param name="Low">The low bound; minus infinity where there is none.</param>
/// <param name="High">The high bound; plus infinity where there is none.</param>
public readonly record struct CensoredValue(double Low, double High);
