using System.Globalization;
using Tarry.Rig.Frames;
using Tarry.Studies.Trials;

namespace Tarry.Rig.SimulatedBench;

/// <summary>
/// The rig of the simulated bench: the state machine of <c>docs/protocol.md</c>, driven by ticks. Presses, heartbeats and
/// commands happen in the order of their ticks; what it says goes to <paramref name="send"/> with the tick at which it says it.
/// </summary>
internal sealed class SimulatedRig(SimulatedRigOptions options, SimulatedChain chain, TickScale scale, Action<long, string> send)
{
    private const int Held = 24;
    private readonly List<InjectedPress> injected = [];
    private readonly LineReader lines = new();
    private readonly List<(uint Sequence, string Frame)> ring = [];
    private readonly HashSet<uint> restartsLeft = [.. options.RestartsAtTrials];
    private Dictionary<string, uint> parameters = Defaults();
    private IntervalGenerator intervals = new(1);
    private ushort boot = options.BootId;
    private long counterOrigin = -(long)options.StartTicks;
    private long startUpTick = long.MaxValue;
    private long heartbeatTick = options.TickHz;
    private long pressTick = long.MaxValue;
    private long finishTick = long.MaxValue;
    private long? strayEdgeTick;
    private SimulatedTrial? trial;
    private char lastCommand;
    private byte lastNumber;
    private bool running;
    private bool stopping;
    private byte resetCause = 1;
    private uint first;
    private uint last;
    private uint acknowledged;
    private uint responses;
    private uint missed;
    private uint early;
    private int badFrames;

    public IReadOnlyList<InjectedPress> Injected => injected;

    /// <summary>Called with the sequence number of every finished trial.</summary>
    public Action<uint>? TrialFinished { get; set; }

    public long NextTick => Math.Min(Math.Min(startUpTick, heartbeatTick), Math.Min(trial is null ? PressDue : long.MaxValue, finishTick));

    private bool Waiting => running && trial is null && last - acknowledged >= Held;

    private long PressDue => running && !Waiting ? pressTick : long.MaxValue;

    /// <summary>Does what is due at a tick.</summary>
    public void Act(long tick)
    {
        if (startUpTick <= tick)
        {
            startUpTick = long.MaxValue;
            heartbeatTick = tick + options.TickHz;
            SayHello(tick);
        }
        else if (finishTick <= tick)
        {
            Finish(finishTick);
        }
        else if (trial is null && PressDue <= tick)
        {
            Press(tick);
        }
        else if (heartbeatTick <= tick)
        {
            heartbeatTick += options.TickHz;
            SayHeartbeat(tick);
        }
    }

    /// <summary>Takes a byte from the host.</summary>
    public void Receive(long tick, byte value)
    {
        const byte Echo = 0x06;
        if (startUpTick != long.MaxValue)
        {
            return;
        }

        if (value == Echo)
        {
            TakeEcho(tick);
            return;
        }

        lines.Push([value], (line, length) =>
        {
            if (HostLine.Parse(line, length) is { } command)
            {
                Do(tick, command);
            }
            else
            {
                badFrames = Math.Min(badFrames + 1, ushort.MaxValue);
            }
        });
    }

    /// <summary>Resets the rig: another boot, the counter from 0, nothing held, no run.</summary>
    public void Restart(long tick, byte cause)
    {
        boot++;
        resetCause = cause;
        counterOrigin = tick;
        parameters = Defaults();
        ring.Clear();
        running = stopping = false;
        trial = null;
        lastCommand = '\0';
        first = last = acknowledged = 0;
        badFrames = 0;
        strayEdgeTick = null;
        finishTick = pressTick = heartbeatTick = long.MaxValue;
        startUpTick = tick + (long)(options.StartUpSeconds * options.TickHz);
    }

    private static Dictionary<string, uint> Defaults() => RigParameter.All.ToDictionary(parameter => parameter.Key, parameter => parameter.Default);

    private void Do(long tick, HostLine command)
    {
        var repeated = command.Kind == lastCommand && command.Number == lastNumber;
        if (command.Kind != 'k')
        {
            (lastCommand, lastNumber) = (command.Kind, command.Number);
        }

        switch (command.Kind)
        {
            case 'h':
                SayHello(tick);
                break;
            case 'k' when command.Number32(0, 8) is { } sequence:
                Acknowledge(tick, sequence);
                break;
            case 'k':
                break;
            case 'p' when command.Number32(0, 4) is { } id:
                Say(tick, $"K {boot:x4} {command.Number:x2} {id:x4} {Counter(tick):x12}");
                break;
            case 'c':
                Answer(tick, command, Set(command));
                break;
            case 'r':
                Resend(tick, command);
                break;
            case 'g':
                Go(tick, command, repeated);
                break;
            case 'x':
                Answer(tick, command, null);
                Stop(tick);
                break;
            default:
                Answer(tick, command, command.Kind == 'p' ? "form" : "kind");
                break;
        }
    }

    private string? Set(HostLine command)
    {
        if (command.Fields.Count != 2 || command.Number32(1, 8) is not { } value)
        {
            return "form";
        }

        if (RigParameter.All.FirstOrDefault(parameter => parameter.Key == command.Fields[0]) is not { } parameter)
        {
            return "key";
        }

        var minimum = parameter == RigParameter.IntervalMaximum ? parameters[RigParameter.IntervalMinimum.Key] : parameter.Minimum;
        if (value < minimum || value > parameter.Maximum)
        {
            return "range";
        }

        if (running)
        {
            return "state";
        }

        parameters[parameter.Key] = value;
        return null;
    }

    private void Go(long tick, HostLine command, bool repeated)
    {
        if (repeated || running)
        {
            Answer(tick, command, repeated ? null : "state");
            return;
        }

        if (parameters[RigParameter.IntervalMaximum.Key] < parameters[RigParameter.IntervalMinimum.Key])
        {
            Answer(tick, command, "range");
            return;
        }

        Answer(tick, command, null);
        running = true;
        stopping = false;
        first = parameters[RigParameter.FirstSequence.Key];
        last = acknowledged = first - 1;
        ring.Clear();
        responses = missed = early = 0;
        intervals = new IntervalGenerator(parameters[RigParameter.Seed.Key]);
        pressTick = tick + DrawInterval();
    }

    private void Stop(long tick)
    {
        stopping = running;
        if (running && trial is null)
        {
            End(tick, "stop");
        }
    }

    private void Acknowledge(long tick, uint sequence)
    {
        var waited = Waiting;
        acknowledged = Math.Max(acknowledged, Math.Min(sequence, last));
        if (waited && !Waiting && pressTick < tick)
        {
            pressTick = tick;
            waitedForHost = true;
        }
    }

    private bool waitedForHost;

    private void Resend(long tick, HostLine command)
    {
        if (command.Number32(0, 8) is not { } from || command.Number32(1, 2) is not { } count || count == 0)
        {
            Answer(tick, command, "form");
            return;
        }

        var asked = ring.Where(held => held.Sequence >= from && held.Sequence - from < count).ToList();
        Answer(tick, command, asked.Count == count ? null : "gone");
        if (asked.Count == count)
        {
            asked.ForEach(held => send(tick, held.Frame));
        }
    }

    private void Press(long tick)
    {
        var sequence = last + 1;
        if (restartsLeft.Remove(sequence))
        {
            const byte Watchdog = 8;
            Restart(tick, Watchdog);
            return;
        }

        trial = new SimulatedTrial(sequence, tick);
        if (waitedForHost)
        {
            trial.Flags |= TrialFlags.WaitedForHost;
            waitedForHost = false;
        }

        if (strayEdgeTick is not null)
        {
            trial.Flags |= TrialFlags.StrayEdgeBefore;
            strayEdgeTick = null;
        }

        const uint EchoSource = 2;
        if (parameters[RigParameter.ResponseSource.Key] != EchoSource)
        {
            Respond(trial);
        }

        finishTick = FinishOf(trial);
        pressTick = tick + DrawInterval();
    }

    private void Respond(SimulatedTrial pressed)
    {
        var response = chain.Press(scale.ToMicroseconds(pressed.PressTick));
        long? latency = response.LatencyUs is { } us ? scale.ToTicks(us) : null;
        injected.Add(new InjectedPress(pressed.Sequence, pressed.PressTick - counterOrigin, latency));
        if (response.ActiveAtPress)
        {
            pressed.Flags |= TrialFlags.LineActiveAtPress;
        }

        var due = pressed.PressTick + latency;
        if (latency <= Ticks(RigParameter.TimeOut))
        {
            pressed.ResponseTick = due;
        }

        if (due <= FinishOf(pressed))
        {
            pressed.Edges = response.Edges;
        }
        else
        {
            strayEdgeTick = due;
        }

        if (response.Edges > 1)
        {
            pressed.Flags |= TrialFlags.Bounced;
        }
    }

    private void TakeEcho(long tick)
    {
        if (trial is null || parameters[RigParameter.ResponseSource.Key] != 2)
        {
            return;
        }

        trial.Edges = Math.Min(trial.Edges + 1, byte.MaxValue);
        if (trial.ResponseTick is not null)
        {
            trial.Flags |= TrialFlags.Bounced;
        }
        else if (tick - trial.PressTick <= Ticks(RigParameter.TimeOut))
        {
            trial.ResponseTick = tick;
            finishTick = FinishOf(trial);
        }
    }

    private void Finish(long tick)
    {
        var done = trial!;
        trial = null;
        finishTick = long.MaxValue;
        last = done.Sequence;
        var latency = done.ResponseTick - done.PressTick;
        var isEarly = done.Flags.HasFlag(TrialFlags.LineActiveAtPress) || latency < Ticks(RigParameter.EarlyMinimum);
        var outcome = isEarly ? 'e' : latency is null ? 'm' : 'r';
        responses += outcome == 'r' ? 1u : 0;
        missed += outcome == 'm' ? 1u : 0;
        early += outcome == 'e' ? 1u : 0;
        var latencyText = latency is { } ticks ? ticks.ToString("x8", CultureInfo.InvariantCulture) : "-";
        var frame = Text($"T {boot:x4} {done.Sequence:x8} {Counter(done.PressTick):x12} {latencyText} {outcome} {(int)done.Flags:x2} {done.Edges:x2}");
        ring.Add((done.Sequence, frame));
        if (ring.Count > Held)
        {
            ring.RemoveAt(0);
        }

        send(tick, frame);
        TrialFinished?.Invoke(last);
        pressTick = Math.Max(pressTick, tick);
        if (strayEdgeTick is { } stray)
        {
            pressTick = Math.Max(pressTick, stray + Ticks(RigParameter.Rearm));
        }

        var count = parameters[RigParameter.Count.Key];
        if (stopping || (count > 0 && last - first + 1 >= count))
        {
            End(tick, stopping ? "stop" : "count");
        }
    }

    private void End(long tick, string reason)
    {
        running = stopping = false;
        pressTick = long.MaxValue;
        Say(tick, $"D {boot:x4} {responses + missed + early:x8} {responses:x8} {missed:x8} {early:x8} {reason}");
    }

    private long FinishOf(SimulatedTrial inFlight) =>
        Math.Max(
            inFlight.PressTick + Ticks(RigParameter.Hold),
            inFlight.ResponseTick ?? inFlight.PressTick + Ticks(RigParameter.TimeOut))
        + Ticks(RigParameter.Rearm);

    private long DrawInterval() => intervals.Next(Ticks(RigParameter.IntervalMinimum), Ticks(RigParameter.IntervalMaximum));

    private long Ticks(RigParameter parameter) => (long)parameters[parameter.Key] * options.TickHz / 1_000_000;

    private ulong Counter(long tick) => (ulong)(tick - counterOrigin) & ((1UL << options.CounterBits) - 1);

    private void SayHello(long tick) =>
        Say(tick, $"B {boot:x4} 01 {resetCause:x2} {options.TickHz:x8} {options.CounterBits:x2} {options.Board} {options.Firmware}");

    private void SayHeartbeat(long tick)
    {
        var state = Waiting ? 'w' : running ? 'r' : 'i';
        Say(tick, $"P {boot:x4} {Counter(tick):x12} {last:x8} {state} {last - acknowledged:x4} {badFrames:x4} 0000");
    }

    private void Answer(long tick, HostLine command, string? refusal) =>
        Say(tick, refusal is null
            ? (FormattableString)$"A {boot:x4} {command.Number:x2} {command.Kind}"
            : $"N {boot:x4} {command.Number:x2} {command.Kind} {refusal}");

    private void Say(long tick, FormattableString text) => send(tick, Text(text));

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
