namespace Tarry.Findings.Comparisons;

/// <summary>What can be said of a against b. Told: Holm-adjusted p below 0.05. Small: the 90 % interval lies inside the margin.</summary>
public enum Verdict
{
    /// <summary>Told and not small, a later than b.</summary>
    Slower,

    /// <summary>Told and not small, a sooner than b.</summary>
    Faster,

    /// <summary>Told and small: measurable, does not matter.</summary>
    BelowMargin,

    /// <summary>Not told and small.</summary>
    NoDifferenceThatMatters,

    /// <summary>Neither told nor small.</summary>
    Undecided,
}
