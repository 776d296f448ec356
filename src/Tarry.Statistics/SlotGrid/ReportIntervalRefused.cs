namespace Tarry.Statistics.SlotGrid;

/// <summary>No report interval is claimed.</summary>
/// <param name="Trials">How many presses were looked at.</param>
/// <param name="FrameIntervalMs">The interval of the frames, where they stand on a stable grid.</param>
/// <param name="Reason">Why.</param>
/// <param name="UpperMs">What the report interval is at most, if there are slots; null where the data bound nothing.</param>
/// <param name="ChoicesMs">Intervals that the data do not tell apart, ascending; empty where there is no line.</param>
public sealed record ReportIntervalRefused(
    int Trials,
    double? FrameIntervalMs,
    ReportIntervalReason Reason,
    double? UpperMs,
    IReadOnlyList<double> ChoicesMs) : ReportIntervalOutcome(Trials, FrameIntervalMs);
