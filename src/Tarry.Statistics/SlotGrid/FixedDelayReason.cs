namespace Tarry.Statistics.SlotGrid;

/// <summary>Why no fixed delay is claimed. The JSON name is the words with hyphens, in lower case.</summary>
public enum FixedDelayReason
{
    /// <summary>No stable grid of frames is seen, so that the wait for a frame cannot be taken off.</summary>
    NoFrameGrid,

    /// <summary>The phase of the frames wanders.</summary>
    FramesWander,

    /// <summary>The reference shows a further grid behind the frames, whose wait would be in it.</summary>
    FurtherGrid,

    /// <summary>Frames or slots jitter so much, for as few presses, that the standard error is above <see cref="FixedDelayFound.LargestStandardErrorMs"/>.</summary>
    TooUncertain,
}
