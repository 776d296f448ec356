using System.Globalization;
using Tarry.Statistics.SlotGrid;

namespace Tarry.Findings.ReportIntervals;

/// <summary>The words of a fixed delay that is not claimed, and what would help. The same everywhere.</summary>
public static class FixedDelayWording
{
    /// <summary>Why no fixed delay is claimed, in one sentence.</summary>
    public static string Reason(FixedDelayRefused refused)
    {
        ArgumentNullException.ThrowIfNull(refused);
        return refused.Reason switch
        {
            FixedDelayReason.NoFrameGrid => "No stable grid of frames is seen, so the wait for a frame cannot be taken off.",
            FixedDelayReason.FramesWander => "The frames wander in phase, so the wait for a frame cannot be taken off.",
            FixedDelayReason.FurtherGrid => "The reference shows a further grid behind the frames, whose wait would be in it.",
            FixedDelayReason.TooUncertain => string.Create(
                CultureInfo.InvariantCulture,
                $"Frames or slots jitter by {refused.BlurMs ?? 0:0.###} ms, so it would be known to {refused.StandardErrorMs ?? 0:0.###} ms only; above {FixedDelayFound.LargestStandardErrorMs:0.##} ms none is claimed."),
            _ => throw new ArgumentOutOfRangeException(nameof(refused), refused.Reason, "A reason without words."),
        };
    }

    /// <summary>What would make it known, in one sentence.</summary>
    public static string Remedy(FixedDelayRefused refused)
    {
        ArgumentNullException.ThrowIfNull(refused);
        return refused.Reason switch
        {
            FixedDelayReason.NoFrameGrid or FixedDelayReason.FramesWander => "Cap the frame rate so that frames stand on a stable grid.",
            FixedDelayReason.FurtherGrid => "Turn synchronisation with the screen off, or sense in front of it.",
            FixedDelayReason.TooUncertain => "Capture more presses, or steady the frames with a cap.",
            _ => throw new ArgumentOutOfRangeException(nameof(refused), refused.Reason, "A reason without words."),
        };
    }
}
