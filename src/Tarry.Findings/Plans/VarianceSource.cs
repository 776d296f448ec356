namespace Tarry.Findings.Plans;

/// <summary>Where a plan has a standard deviation from.</summary>
public enum VarianceSource
{
    /// <summary>From the sessions of the study.</summary>
    Measured,

    /// <summary>The planner stated it.</summary>
    Stated,

    /// <summary>Nobody stated it and nothing is measured: a value for want of a better one.</summary>
    Default,
}
