namespace Tarry.Statistics.SlotGrid;

/// <summary>The fixed delay of one series.</summary>
/// <param name="DelayMs">The delay without the waits for slot and frame, in milliseconds.</param>
/// <param name="StandardErrorMs">Its standard error within the series.</param>
/// <param name="BlurMs">The standard deviation of the jitter of frames and slots, as it blurs the ends of the wait for a frame.</param>
/// <param name="Trials">How many presses the series has.</param>
public sealed record FixedDelayFound(double DelayMs, double StandardErrorMs, double BlurMs, int Trials) : FixedDelayOutcome(Trials)
{
    /// <summary>A fixed delay with a larger standard error, in milliseconds, is not claimed.</summary>
    public const double LargestStandardErrorMs = 0.02;
}
