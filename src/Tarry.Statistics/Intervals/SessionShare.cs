namespace Tarry.Statistics.Intervals;

/// <summary>A share over sessions, and whether the sessions agree on it.</summary>
/// <param name="Share">All counts over all trials.</param>
/// <param name="Limits">The interval of the share.</param>
/// <param name="SessionsDiffer">Whether the rates differ between sessions by more than chance.</param>
/// <param name="HeterogeneityStatistic">Pearson's chi-squared of equal rates, on one degree of freedom less than sessions; 0 where nothing or everything was counted.</param>
/// <param name="HeterogeneityP">The probability of a statistic at least as large were all rates equal; 1 with a single session.</param>
public readonly record struct SessionShare(
    double Share,
    ConfidenceLimits Limits,
    bool SessionsDiffer,
    double HeterogeneityStatistic,
    double HeterogeneityP);
