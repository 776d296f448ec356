namespace Tarry.Statistics.Censoring;

/// <summary>An interval to which the data assign probability, without saying where in it.</summary>
/// <param name="Low">Its low end.</param>
/// <param name="High">Its high end.</param>
/// <param name="Mass">The probability.</param>
public readonly record struct SupportInterval(double Low, double High, double Mass);
