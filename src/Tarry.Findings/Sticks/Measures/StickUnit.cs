namespace Tarry.Findings.Sticks.Measures;

/// <summary>The unit of a measure.</summary>
public enum StickUnit
{
    /// <summary>Per cent of half the range that the axis can say: 100 from the middle to an end.</summary>
    Percent,

    /// <summary>Per cent of half the range in a minute.</summary>
    PercentPerMinute,

    /// <summary>Per cent of something other than the range, which the definition names.</summary>
    RelativePercent,

    /// <summary>Degrees.</summary>
    Degrees,

    /// <summary>Milliseconds.</summary>
    Milliseconds,

    /// <summary>Steps of the axis.</summary>
    Steps,

    /// <summary>Bits.</summary>
    Bits,

    /// <summary>A count.</summary>
    Count,
}
