namespace Tarry.Statistics.SlotGrid;

/// <summary>A spectral line that the reference shows.</summary>
/// <param name="FrequencyHz">Its frequency.</param>
/// <param name="PowerToThreshold">Its power over the false-alarm threshold.</param>
/// <param name="Owner">Whose it is.</param>
/// <param name="FrameMultiple">k of k/T2, where frames or a combination own it; else 0.</param>
/// <param name="SlotMultiple">m of m/T_ref, where the reference's slots or a combination own it; else 0.</param>
public sealed record ChainLine(double FrequencyHz, double PowerToThreshold, ChainLineOwner Owner, int FrameMultiple, int SlotMultiple);
