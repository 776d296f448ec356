namespace Tarry.Findings.ReportIntervals;

/// <summary>The responses of a condition laid over its slot grid, and over its frames where there are any.</summary>
/// <param name="Points">At most 800 trials, every so manieth of all.</param>
/// <param name="LatencyByPhase">The mean latency by when in the report interval the press came, over all trials.</param>
/// <param name="ArrivalsInReportInterval">How many responses arrived in each equal part of the report interval.</param>
/// <param name="ArrivalsInFrame">How many arrived in each equal part of the frame interval, half a frame before its frame to half after; empty without frames.</param>
public sealed record SlotFold(
    IReadOnlyList<SlotFoldPoint> Points,
    IReadOnlyList<SlotFoldBin> LatencyByPhase,
    IReadOnlyList<int> ArrivalsInReportInterval,
    IReadOnlyList<int> ArrivalsInFrame);
