namespace Tarry.Rig.ClockFit;

/// <summary>Extends a counter that wraps at a power of two to 64 bits, by the order of the readings: one that went back has wrapped.</summary>
/// <remarks>Right as long as less than a whole turn of the counter lies between two readings.</remarks>
/// <param name="counterBits">The counter wraps at 2 to this power.</param>
/// <param name="lastTicks">The last reading, already extended; 0 at the start.</param>
public sealed class TickExtension(int counterBits, long lastTicks = 0)
{
    private readonly ulong mask = (1UL << counterBits) - 1;
    private ulong last = (ulong)lastTicks;

    /// <summary>The reading in 64 bits. The next call reads on from here.</summary>
    public long Extend(ulong counter)
    {
        last += (counter - last) & mask;
        return (long)last;
    }
}
