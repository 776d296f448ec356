namespace Tarry.Statistics.SlotGrid;

/// <summary>What speaks for a report interval.</summary>
/// <param name="Kind">By which way it was found.</param>
/// <param name="LineToThreshold">The power of its spectral line over the false-alarm threshold.</param>
/// <param name="ExplainedShare">The share of presses whose frame is the first after their slot; null without a grid of frames.</param>
/// <param name="LeadOverNoGridNats">Log likelihood over a device without slots, in nats; null without a grid of frames.</param>
/// <param name="LeadOverRivalNats">Log likelihood over the next best interval, in nats; null without a grid of frames.</param>
public sealed record SlotGridEvidence(
    SlotGridKind Kind,
    double LineToThreshold,
    double? ExplainedShare,
    double? LeadOverNoGridNats,
    double? LeadOverRivalNats);
