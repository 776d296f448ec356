namespace Tarry.Statistics.SlotGrid;

/// <summary>Where the grids of one series stand, and its fixed delay.</summary>
/// <param name="Sitting">The sitting.</param>
/// <param name="SlotPhaseMs">A press time, in milliseconds from the series' first press, at which a slot falls (the fixed delay in front of the slot taken off).</param>
/// <param name="FramePhaseMs">An arrival time, from the first press, at which a frame shows; null without a grid of frames.</param>
/// <param name="FrameIntervalMs">The frame interval of this series; null without a grid of frames.</param>
/// <param name="FixedDelay">The delay without the waits for slot and frame, or why it is not claimed.</param>
public sealed record SlotSeries(
    string Sitting,
    double SlotPhaseMs,
    double? FramePhaseMs,
    double? FrameIntervalMs,
    FixedDelayOutcome FixedDelay)
{
    /// <summary>The fixed delay in milliseconds; null where none is claimed.</summary>
    public double? FixedDelayMs => (FixedDelay as FixedDelayFound)?.DelayMs;
}
