namespace Tarry.Rig.SimulatedBench;

/// <summary>The rig's generator of press intervals: xorshift32, as <c>docs/protocol.md</c> has it.</summary>
internal sealed class IntervalGenerator(uint seed)
{
    private uint state = seed;

    public long Next(long minimumTicks, long maximumTicks)
    {
        state ^= state << 13;
        state ^= state >> 17;
        state ^= state << 5;
        return minimumTicks + (long)(((UInt128)state * (ulong)(maximumTicks - minimumTicks + 1)) >> 32);
    }
}
