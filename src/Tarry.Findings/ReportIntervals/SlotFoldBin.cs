namespace Tarry.Findings.ReportIntervals;

/// <summary>The trials whose press came in one equal part of the report interval.</summary>
/// <param name="Trials">How many.</param>
/// <param name="MeanLatencyMs">Their mean latency; 0 where there are none.</param>
public readonly record struct SlotFoldBin(int Trials, double MeanLatencyMs);
