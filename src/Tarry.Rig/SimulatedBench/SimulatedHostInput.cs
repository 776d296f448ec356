using Tarry.Metrology;
using Tarry.Rig.HostEvents;
using Tarry.Rig.HostEvents.Echo;

namespace Tarry.Rig.SimulatedBench;

/// <summary>The simulated device as its host sees it: a pad with one button. Reports are stamped as they reach the host, and told a little later.</summary>
internal sealed class SimulatedHostInput(SimulatedRigOptions options, VirtualTime time, SeededGenerator random) : IHostInputFeed
{
    private const ushort Button = 0x130;
    private readonly PriorityQueue<(long Stamp, bool Down), long> coming = new();
    private InputReportHandler? onReport;

    public HostInputDescription Description { get; } = new() { Path = "simulated", Name = "Simulated pad", Bus = "virtual", Buttons = [Button] };

    public InputClock Clock => InputClock.KernelMonotonic;

    public TimeProvider Time => time;

    public long Losses => 0;

    public int Absences => 0;

    public bool IsRealTime => true;

    /// <summary>When the host's program is told of something next.</summary>
    public long NextNanoseconds => coming.TryPeek(out _, out var at) ? at : long.MaxValue;

    /// <summary>A report of a press reaches the host at a true time, and one of its release after half of the time that it is held.</summary>
    public void Press(double atUs, double holdUs)
    {
        Add(atUs, down: true);
        Add(atUs + (holdUs / 2), down: false);
    }

    /// <summary>Tells what is due.</summary>
    public void Tell()
    {
        var (stamp, down) = coming.Dequeue();
        onReport?.Invoke(new InputReport { StampNanoseconds = stamp, Events = [new InputEvent(InputCode.Key, Button, down ? 1 : 0)] });
    }

    public void Begin(InputReportHandler onReport) => this.onReport = onReport;

    public void End() => onReport = null;

    // The cube makes most wakes quick and a few slow, as on a machine that does other things too.
    private void Add(double atUs, bool down)
    {
        var stamp = (long)(1000 * atUs);
        var u = random.NextDouble();
        coming.Enqueue((stamp, down), stamp + (long)(1000 * (options.HostWakeUs + (options.HostWakeJitterUs * u * u * u))));
    }
}
