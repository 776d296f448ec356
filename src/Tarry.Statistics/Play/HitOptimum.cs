namespace Tarry.Statistics.Play;

/// <summary>The best constant compensation and how often a press hits with it.</summary>
/// <param name="Compensation">By how much to press early, in ms.</param>
/// <param name="Share">The share of presses that hit, sessions weighing alike, misses among those that do not.</param>
public readonly record struct HitOptimum(double Compensation, double Share);
