namespace Tarry.Statistics.SlotGrid;

/// <summary>The best slot grid of one series near a report interval.</summary>
/// <param name="Explained">How many presses' frame is the first after their slot.</param>
/// <param name="FixedDelay">The fixed delay in seconds.</param>
/// <param name="Point">The grid.</param>
internal readonly record struct TwoGridFit(int Explained, double FixedDelay, TwoGridPoint Point);
