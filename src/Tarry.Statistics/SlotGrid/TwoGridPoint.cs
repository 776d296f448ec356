namespace Tarry.Statistics.SlotGrid;

/// <summary>A slot grid in front of the frames of one series: interval and phase of the slots in seconds, and a correction of the frame interval.</summary>
internal readonly record struct TwoGridPoint(double Interval, double Phase, double FrameCorrection);
