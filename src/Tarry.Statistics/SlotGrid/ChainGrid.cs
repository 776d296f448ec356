namespace Tarry.Statistics.SlotGrid;

/// <summary>What the reference of a sitting shows of the chain behind every device: the lines that are not a device's own.</summary>
/// <param name="Sitting">The sitting.</param>
/// <param name="FrameIntervalMs">The interval of the chain's last grid, the frames; null where no stable one is seen.</param>
/// <param name="Lines">Every line of the reference and whose it is, the tallest first.</param>
public sealed record ChainGrid(string Sitting, double? FrameIntervalMs, IReadOnlyList<ChainLine> Lines);
