namespace Tarry.Statistics.SlotGrid;

/// <summary>A report interval, with what speaks for it.</summary>
/// <param name="Trials">How many presses it rests on.</param>
/// <param name="FrameIntervalMs">The interval of the frames, where they stand on a stable grid.</param>
/// <param name="IntervalMs">The report interval on the data's own clock.</param>
/// <param name="LowMs">The low end of its 95 % interval.</param>
/// <param name="HighMs">The high end.</param>
/// <param name="Evidence">The numbers that speak for it.</param>
/// <param name="Series">Slot phase and fixed delay of each series, in the order given.</param>
public sealed record ReportIntervalFound(
    int Trials,
    double? FrameIntervalMs,
    double IntervalMs,
    double LowMs,
    double HighMs,
    SlotGridEvidence Evidence,
    IReadOnlyList<SlotSeries> Series) : ReportIntervalOutcome(Trials, FrameIntervalMs);
