namespace Tarry.Statistics.SlotGrid;

/// <summary>A line: where it stands and how tall it is.</summary>
internal readonly record struct SpectralLine(double Frequency, double Power);
