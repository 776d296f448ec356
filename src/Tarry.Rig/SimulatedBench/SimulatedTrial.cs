using Tarry.Studies.Trials;

namespace Tarry.Rig.SimulatedBench;

/// <summary>The trial in flight on a simulated rig. Ticks are those of the bench.</summary>
internal sealed class SimulatedTrial(uint sequence, long pressTick)
{
    public uint Sequence => sequence;

    public long PressTick => pressTick;

    public TrialFlags Flags { get; set; }

    public long? ResponseTick { get; set; }

    public int Edges { get; set; }
}
