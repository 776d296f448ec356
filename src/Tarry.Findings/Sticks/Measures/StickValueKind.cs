namespace Tarry.Findings.Sticks.Measures;

/// <summary>What values a measure can have.</summary>
public enum StickValueKind
{
    /// <summary>Any, with a sign.</summary>
    EitherSign,

    /// <summary>0 or more; an estimate below is a zero.</summary>
    NotNegative,

    /// <summary>Above 0, and estimated by its logarithm.</summary>
    Size,
}
