namespace Tarry.Statistics.Comparisons;

/// <summary>Which places of a ranking a condition may hold; 1 is the smallest mean.</summary>
/// <param name="Best">The best place not ruled out.</param>
/// <param name="Worst">The worst place not ruled out.</param>
public readonly record struct RankSet(int Best, int Worst);
