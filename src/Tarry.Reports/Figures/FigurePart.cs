namespace Tarry.Reports.Figures;

/// <summary>In which part of a report a figure stands.</summary>
public enum FigurePart
{
    /// <summary>Among the figures of latencies.</summary>
    Latencies,

    /// <summary>Beside the table of reports.</summary>
    Reports,

    /// <summary>With the sticks.</summary>
    Sticks,
}
