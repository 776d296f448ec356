namespace Tarry.Rig.HostEvents.Watching;

/// <summary>What is known of a device's report intervals so far.</summary>
/// <param name="Reports">Reports.</param>
/// <param name="Intervals">Intervals between them.</param>
/// <param name="MedianUs">Their median; null where there is none.</param>
/// <param name="P99Us">Their 99th percentile.</param>
/// <param name="ShortestUs">The shortest.</param>
/// <param name="LongestUs">The longest.</param>
/// <param name="Missed">Slots in which nothing came, by the median.</param>
/// <param name="Doubled">Intervals shorter than half the median.</param>
/// <param name="Pauses">Intervals so long that the device had nothing to tell.</param>
/// <param name="Backwards">Stamps that went back.</param>
public readonly record struct ReportIntervalsSoFar(
    long Reports, long Intervals, long? MedianUs, long? P99Us, long ShortestUs, long LongestUs, long Missed, long Doubled, long Pauses, long Backwards);
