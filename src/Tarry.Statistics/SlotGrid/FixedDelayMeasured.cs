namespace Tarry.Statistics.SlotGrid;

/// <summary>The fixed delay of one series, in seconds.</summary>
/// <param name="Delay">The delay without the waits for slot and frame.</param>
/// <param name="StandardError">Its standard error within the series.</param>
/// <param name="Blur">The standard deviation of the jitter of frames and slots that blurs the ends of the wait for a frame.</param>
internal readonly record struct FixedDelayMeasured(double Delay, double StandardError, double Blur);
