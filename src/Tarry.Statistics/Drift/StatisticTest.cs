namespace Tarry.Statistics.Drift;

/// <summary>A test statistic and the probability of one at least as extreme were nothing the matter.</summary>
/// <param name="Statistic">The statistic.</param>
/// <param name="P">Its p.</param>
public readonly record struct StatisticTest(double Statistic, double P);
