using Tarry.Metrology;
using Tarry.Rig.Frames;
using Tarry.Rig.HostEvents.Echo;
using Tarry.Rig.Link;

namespace Tarry.Rig.SimulatedBench;

/// <summary>
/// A whole bench without hardware: a rig that speaks the protocol byte for byte, a device under test, the line between rig
/// and host with its delays and its noise, and a clock of their own that runs as fast as the host reads.
/// </summary>
/// <remarks>The same device, options and host behaviour give the same bytes on every machine. Not for several threads at once.</remarks>
public sealed class SimulatedRigPortSource : IRigPortSource
{
    private const int BaudRate = 250_000;
    private const int BitsPerByte = 10;
    private readonly SimulatedRigOptions options;
    private readonly TickScale scale;
    private readonly SimulatedRig rig;
    private readonly VirtualTime time = new();
    private readonly Queue<(long Nanoseconds, byte[] Bytes)> toHost = new();
    private readonly Queue<(long Tick, byte Value)> toRig = new();
    private readonly SeededGenerator transfer;
    private readonly SeededGenerator noiseToHost;
    private readonly SeededGenerator noiseToRig;
    private readonly HashSet<uint> unplugsLeft;
    private readonly SimulatedHostInput hostInput;
    private int connections;
    private long unpluggedUntil;
    private long sendingUntilTick;
    private long receivingUntilTick;
    private long lastArrival;

    /// <summary>A bench for a device.</summary>
    public SimulatedRigPortSource(SimulatedDevice device, SimulatedRigOptions options)
    {
        ArgumentNullException.ThrowIfNull(device);
        ArgumentNullException.ThrowIfNull(options);
        this.options = options;
        scale = new TickScale(options.TickHz, options.RateErrorPpm);
        var chain = new SimulatedChain(device, SeededGenerator.ForPart(options.Seed, 0).NextUInt64());
        transfer = SeededGenerator.ForPart(options.Seed, 1);
        noiseToHost = SeededGenerator.ForPart(options.Seed, 2);
        noiseToRig = SeededGenerator.ForPart(options.Seed, 3);
        unplugsLeft = [.. options.UnplugsAfterTrials];
        rig = new SimulatedRig(options, chain, scale, SendToHost) { TrialFinished = UnplugIfDue };
        hostInput = new SimulatedHostInput(options, time, SeededGenerator.ForPart(options.Seed, 4));
        rig.HostTold = hostInput.Press;
    }

    /// <inheritdoc/>
    public string Name => "simulated";

    /// <inheritdoc/>
    public TimeProvider Time => time;

    /// <summary>The device under test as the host sees it: what it tells of is told while the port is read, in the bench's own time.</summary>
    public IHostInputFeed HostInput => hostInput;

    /// <summary>The truth of every press so far.</summary>
    public IReadOnlyList<InjectedPress> Injected => rig.Injected;

    /// <summary>Restarts the rig, as its watchdog would.</summary>
    public void RestartRig()
    {
        const byte Watchdog = 8;
        rig.Restart(NowTick, Watchdog);
    }

    /// <summary>Which opening of the port the cable leads to; null while there is none.</summary>
    internal int? ConnectedTo { get; private set; }

    /// <inheritdoc/>
    public IRigPort Open()
    {
        if (time.GetTimestamp() < unpluggedUntil)
        {
            throw new RigException("The simulated cable is unplugged.", "Plug it in again.");
        }

        Disconnect();
        var port = new SimulatedRigPort(this, ++connections);
        ConnectedTo = connections;
        if (options.RestartsWhenOpened)
        {
            const byte ResetPin = 2;
            rig.Restart(NowTick, ResetPin);
        }

        return port;
    }

    /// <inheritdoc/>
    public void Pause(TimeSpan time, CancellationToken cancellation) => AdvanceUntil(() => false, time);

    internal int Read(SimulatedRigPort reader, Span<byte> buffer, TimeSpan timeout)
    {
        AdvanceUntil(() => reader.IsDead || HasArrived, timeout);
        if (reader.IsDead || !HasArrived)
        {
            return 0;
        }

        var bytes = toHost.Dequeue().Bytes;
        bytes.CopyTo(buffer);
        return bytes.Length;
    }

    internal void Write(ReadOnlySpan<byte> bytes)
    {
        var tick = Math.Max(NowTick, receivingUntilTick);
        foreach (var value in bytes)
        {
            tick += TicksPerByte;
            toRig.Enqueue((tick, Through(value, options.NoiseToRig, noiseToRig)));
        }

        receivingUntilTick = tick;
    }

    internal void Disconnect()
    {
        ConnectedTo = null;
        toHost.Clear();
        toRig.Clear();
    }

    private long TicksPerByte => (long)options.TickHz * BitsPerByte / BaudRate;

    private long NowTick => scale.FromNanoseconds(time.GetTimestamp());

    private bool HasArrived => toHost.TryPeek(out var first) && first.Nanoseconds <= time.GetTimestamp();

    private void AdvanceUntil(Func<bool> reached, TimeSpan limit)
    {
        var deadline = time.GetTimestamp() + (limit.Ticks * 100);
        while (!reached())
        {
            var byteTick = toRig.TryPeek(out var received) ? received.Tick : long.MaxValue;
            var tick = Math.Min(byteTick, rig.NextTick);
            var rigTime = tick == long.MaxValue ? long.MaxValue : scale.ToNanoseconds(tick);
            var arrival = toHost.TryPeek(out var first) && !HasArrived ? first.Nanoseconds : long.MaxValue;
            var told = hostInput.NextNanoseconds;
            var next = Math.Min(Math.Min(rigTime, arrival), told);
            if (next > deadline)
            {
                time.AdvanceTo(deadline);
                return;
            }

            time.AdvanceTo(next);
            if (told == next)
            {
                hostInput.Tell();
                continue;
            }

            if (rigTime > next)
            {
                continue;
            }

            if (byteTick == tick)
            {
                toRig.Dequeue();
                rig.Receive(tick, received.Value);
            }
            else
            {
                rig.Act(tick);
            }
        }
    }

    private void SendToHost(long tick, string body)
    {
        var bytes = FrameCheck.Seal(body);
        sendingUntilTick = Math.Max(sendingUntilTick, tick) + (bytes.Length * TicksPerByte);
        if (ConnectedTo is null)
        {
            return;
        }

        for (var i = 0; options.NoiseToHost > 0 && i < bytes.Length; i++)
        {
            bytes[i] = Through(bytes[i], options.NoiseToHost, noiseToHost);
        }

        // The cube makes most transfers quick and a few slow, as a shared bus does, without the logarithm that an exponential needs.
        var u = transfer.NextDouble();
        var delay = 1e6 * (options.TransferDelayMs + (options.TransferJitterMs * u * u * u));
        lastArrival = Math.Max(lastArrival, scale.ToNanoseconds(sendingUntilTick) + (long)delay);
        toHost.Enqueue((lastArrival, bytes));
    }

    private void UnplugIfDue(uint sequence)
    {
        if (unplugsLeft.Remove(sequence))
        {
            Disconnect();
            unpluggedUntil = time.GetTimestamp() + (long)(options.UnpluggedSeconds * 1e9);
        }
    }

    private static byte Through(byte value, double share, SeededGenerator random) =>
        share > 0 && random.NextDouble() < share ? (byte)random.NextInt32(256) : value;
}
