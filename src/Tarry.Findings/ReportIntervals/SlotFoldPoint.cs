namespace Tarry.Findings.ReportIntervals;

/// <summary>One trial over the slot grid.</summary>
/// <param name="PressPhaseMs">From the last slot to the press.</param>
/// <param name="LatencyMs">The latency.</param>
/// <param name="ArrivalPhaseMs">From the last slot to the response, less whole report intervals.</param>
public readonly record struct SlotFoldPoint(double PressPhaseMs, double LatencyMs, double ArrivalPhaseMs);
