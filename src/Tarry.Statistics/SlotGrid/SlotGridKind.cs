namespace Tarry.Statistics.SlotGrid;

/// <summary>By which way a report interval was found.</summary>
public enum SlotGridKind
{
    /// <summary>Slots in front of frames on a stable grid: presses are assigned to frames, and the noise after the frame drops out.</summary>
    TwoGrids,

    /// <summary>The sawtooth of the latencies over the press times: no frames, or frames on no stable grid.</summary>
    Sawtooth,
}
