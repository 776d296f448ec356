using Tarry.Rig.SimulatedBench.Sticks;
using Tarry.Studies.Sticks;

namespace Tarry.Rig.SimulatedBench;

/// <summary>What a simulated bench's rig and line are like.</summary>
public sealed record SimulatedRigOptions
{
    /// <summary>Seed of everything random on the bench.</summary>
    public ulong Seed { get; init; } = 1;

    /// <summary>The board that it says it is.</summary>
    public string Board { get; init; } = "simulated";

    /// <summary>The firmware that it says it has.</summary>
    public string Firmware { get; init; } = "0.1.0";

    /// <summary>The boot counter at the start.</summary>
    public ushort BootId { get; init; } = 1;

    /// <summary>Ticks a second as stated.</summary>
    public uint TickHz { get; init; } = 16_000_000;

    /// <summary>How much faster than stated the rig's timer runs.</summary>
    public double RateErrorPpm { get; init; }

    /// <summary>From the rig's pin to the contact closing, in microseconds: the optocoupler.</summary>
    public double ActuatorDelayUs { get; init; }

    /// <summary>From the light reaching the sensor's place to its crossing the threshold, in microseconds; only where light answers.</summary>
    public double ThresholdDelayUs { get; init; }

    /// <summary>What the sensor gives when dark, in 1/256 of the supply: a threshold at or below it is always crossed.</summary>
    public int LightWhenDark { get; init; }

    /// <summary>What the sensor gives when bright: a threshold above it is never crossed.</summary>
    public int LightWhenBright { get; init; } = 255;

    /// <summary>From the stamp of a report to the host's program being told of it, in microseconds, at least: a thread that is woken.</summary>
    public double HostWakeUs { get; init; } = 30;

    /// <summary>And at most this more, mostly much less.</summary>
    public double HostWakeJitterUs { get; init; } = 200;

    /// <summary>The stick whose wipers the rig reads in a stream; a sound one at rest where none is given.</summary>
    public SimulatedStickHand StickHand { get; init; } = new(new SimulatedStick(), StickProcedure.Rest);

    /// <summary>Width of the tick counter.</summary>
    public byte CounterBits { get; init; } = 48;

    /// <summary>The tick counter at the start.</summary>
    public ulong StartTicks { get; init; }

    /// <summary>At the presses of these trials the rig restarts.</summary>
    public IReadOnlyList<uint> RestartsAtTrials { get; init; } = [];

    /// <summary>How long the rig takes to come up after a restart.</summary>
    public double StartUpSeconds { get; init; } = 1.6;

    /// <summary>Opening the port resets the rig, as it does with common boards.</summary>
    public bool RestartsWhenOpened { get; init; }

    /// <summary>After these trials the cable is pulled; the rig keeps its power.</summary>
    public IReadOnlyList<uint> UnplugsAfterTrials { get; init; } = [];

    /// <summary>How long it stays pulled.</summary>
    public double UnpluggedSeconds { get; init; } = 5;

    /// <summary>Share of bytes from the rig that arrive as another byte.</summary>
    public double NoiseToHost { get; init; }

    /// <summary>Share of bytes from the host that arrive as another byte.</summary>
    public double NoiseToRig { get; init; }

    /// <summary>Frames from the rig take at least this beyond their time on the line.</summary>
    public double TransferDelayMs { get; init; } = 0.2;

    /// <summary>And at most this more, mostly much less.</summary>
    public double TransferJitterMs { get; init; } = 1;
}
