using Tarry.Studies.Trials;

namespace Tarry.Rig.SimulatedBench;

/// <summary>A trial on a simulated rig. Ticks are those of the bench.</summary>
internal sealed class SimulatedTrial(uint sequence, long pressTick)
{
    public uint Sequence => sequence;

    public long PressTick => pressTick;

    /// <summary>What the device did, whether the rig saw it or not.</summary>
    public long? InjectedLatencyTicks { get; set; }

    /// <summary>From the contact to the effect in true time.</summary>
    public double? TrueLatencyUs { get; set; }

    public long? ResponseTick { get; set; }

    public TrialFlags Flags { get; set; }

    public int Edges { get; set; }

    public Outcome Outcome { get; set; }
}
