namespace Tarry.Findings.Sticks.Measures;

/// <summary>Which of two sticks does better by a measure.</summary>
public enum StickPreference
{
    /// <summary>Neither: the measure describes.</summary>
    None,

    /// <summary>The one with the smaller size, sign aside.</summary>
    Smaller,

    /// <summary>The one with the greater value.</summary>
    Greater,
}
