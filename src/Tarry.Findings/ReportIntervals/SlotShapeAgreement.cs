namespace Tarry.Findings.ReportIntervals;

/// <summary>How the report interval of the slot grid and the block of the latencies' distribution go together. The JSON name is the words with hyphens, in lower case.</summary>
public enum SlotShapeAgreement
{
    /// <summary>Neither says anything.</summary>
    Neither,

    /// <summary>Only the slot grid says something.</summary>
    SlotGridOnly,

    /// <summary>Only the shape says something.</summary>
    ShapeOnly,

    /// <summary>Both say the same.</summary>
    Agree,

    /// <summary>They contradict each other.</summary>
    Conflict,
}
