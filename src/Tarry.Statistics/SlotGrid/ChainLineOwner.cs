namespace Tarry.Statistics.SlotGrid;

/// <summary>Whose a line of the reference is.</summary>
public enum ChainLineOwner
{
    /// <summary>The frame rate or a multiple of it: every condition shows it.</summary>
    Frames,

    /// <summary>The reference's own slots or a multiple of their rate.</summary>
    ReferenceSlots,

    /// <summary>A combination k/T2 + m/T_ref of both.</summary>
    Combination,

    /// <summary>The shadow of a frame line, the rate of the presses beside it.</summary>
    PressRate,

    /// <summary>None of these: something else in the chain, such as the screen's refresh.</summary>
    Unknown,
}
