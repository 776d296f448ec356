namespace Tarry.Statistics.Edges;

/// <summary>Which change of a two-level signal counts.</summary>
public enum SignalEdge
{
    /// <summary>From low to high.</summary>
    Rising,

    /// <summary>From high to low: an active-low line becomes active.</summary>
    Falling,

    /// <summary>Every change.</summary>
    Any,
}
