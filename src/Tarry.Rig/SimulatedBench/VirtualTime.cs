namespace Tarry.Rig.SimulatedBench;

/// <summary>The clock of a simulated bench: it moves when somebody waits on the bench, and then at once.</summary>
public sealed class VirtualTime : TimeProvider
{
    private static readonly DateTimeOffset Epoch = new(2026, 1, 1, 0, 0, 0, TimeSpan.Zero);
    private long nanoseconds;

    /// <inheritdoc/>
    public override long TimestampFrequency => 1_000_000_000;

    /// <inheritdoc/>
    public override long GetTimestamp() => nanoseconds;

    /// <inheritdoc/>
    public override DateTimeOffset GetUtcNow() => Epoch.AddTicks(nanoseconds / 100);

    internal void AdvanceTo(long timestamp) => nanoseconds = Math.Max(nanoseconds, timestamp);
}
