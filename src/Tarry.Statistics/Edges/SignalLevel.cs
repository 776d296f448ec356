namespace Tarry.Statistics.Edges;

/// <summary>The level of a digital signal.</summary>
public enum SignalLevel
{
    /// <summary>Neither low nor high: not driven, contending, or not recorded.</summary>
    Unknown,

    /// <summary>Low.</summary>
    Low,

    /// <summary>High.</summary>
    High,
}
