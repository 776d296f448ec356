namespace Tarry.Statistics.SlotGrid;

/// <summary>The fixed delay of one series, or why none is claimed.</summary>
/// <param name="Trials">How many presses the series has.</param>
public abstract record FixedDelayOutcome(int Trials);
