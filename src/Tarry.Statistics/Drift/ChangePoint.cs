namespace Tarry.Statistics.Drift;

/// <summary>Where a session seems to change level, and how surely.</summary>
/// <param name="Statistic">The largest excursion of the cumulative sum of ranks, scaled to the Kolmogorov law.</param>
/// <param name="P">The probability of one at least as large in a session without change.</param>
/// <param name="Index">The index of the first trial after the change: the most likely place, whether or not the change is real.</param>
/// <param name="Shift">Mean after less mean before, in the unit of the values; too large on average where the change is barely told.</param>
public readonly record struct ChangePoint(double Statistic, double P, int Index, double Shift);
