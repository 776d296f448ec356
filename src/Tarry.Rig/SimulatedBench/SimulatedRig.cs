using System.Globalization;
using Tarry.Rig.Frames;
using Tarry.Rig.SimulatedBench.Sticks;
using Tarry.Studies.Trials;

namespace Tarry.Rig.SimulatedBench;

/// <summary>
/// The rig of the simulated bench: the commands and messages of <c>docs/protocol.md</c>, driven by ticks. What it says goes to
/// <paramref name="send"/> with the tick at which it says it.
/// </summary>
internal sealed class SimulatedRig(SimulatedRigOptions options, SimulatedChain chain, TickScale scale, Action<long, string> send)
{
    private const int Held = 24;
    private readonly List<InjectedPress> injected = [];
    private readonly LineReader lines = new();
    private readonly List<(uint Sequence, string Frame)> ring = [];
    private readonly int[] counts = new int[3];
    private readonly HashSet<uint> restartsLeft = [.. options.RestartsAtTrials];
    private Dictionary<string, uint> parameters = Defaults();
    private SimulatedReadings? reader;
    private SimulatedRun? run;
    private ushort boot = options.BootId;
    private byte resetCause = 1;
    private long counterOrigin = -(long)options.StartTicks;
    private long startUpTick = long.MaxValue;
    private long heartbeatTick = options.TickHz;
    private (char Kind, byte Number) lastCommand;
    private int badFrames;

    /// <summary>The truth of every press so far.</summary>
    public IReadOnlyList<InjectedPress> Injected => injected;

    /// <summary>Told the number of every finished trial.</summary>
    public Action<uint>? TrialFinished { get; set; }

    /// <summary>Told when a report of a press, true microseconds, will reach the host, and for how long the press is held.</summary>
    public Action<double, double>? HostTold { get; set; }

    /// <summary>When something happens next.</summary>
    public long NextTick => Math.Min(Math.Min(startUpTick, heartbeatTick), Math.Min(run?.NextTick ?? long.MaxValue, Readings.NextTick));

    /// <summary>Does what is due at a tick.</summary>
    public void Act(long tick)
    {
        if (startUpTick <= tick)
        {
            startUpTick = long.MaxValue;
            heartbeatTick = tick + options.TickHz;
            SayHello(tick);
        }
        else if (run?.PressDue <= tick && restartsLeft.Remove(run.Last + 1))
        {
            const byte Watchdog = 8;
            Restart(tick, Watchdog);
        }
        else if (run?.NextTick <= tick)
        {
            run.Act(tick);
        }
        else if (Readings.NextTick <= tick)
        {
            Readings.Act(tick);
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
        if (startUpTick != long.MaxValue)
        {
            return;
        }

        if (value == HostCommand.Echo)
        {
            run?.TakeEcho(tick);
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
        run = null;
        Readings.Reset();
        lastCommand = default;
        badFrames = 0;
        heartbeatTick = long.MaxValue;
        startUpTick = tick + (long)(options.StartUpSeconds * options.TickHz);
    }

    private SimulatedReadings Readings => reader ??= new SimulatedReadings(options, (tick, kind, before, told, after) =>
        Say(tick, $"{kind} {boot:x4} {before}{(told is { } at ? Text($" {Counter(at):x12} {after}") : "")}"));

    private static Dictionary<string, uint> Defaults() => RigParameter.All.ToDictionary(parameter => parameter.Key, parameter => parameter.Default);

    private void Do(long tick, HostLine command)
    {
        if (command.Kind == 'k')
        {
            if (command.Number32(0, 8) is { } sequence)
            {
                run?.Acknowledge(tick, sequence);
            }

            return;
        }

        var repeated = lastCommand == (command.Kind, command.Number);
        lastCommand = (command.Kind, command.Number);
        switch (command.Kind)
        {
            case 'h':
                SayHello(tick);
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
                run?.Stop(tick);
                Readings.End(tick);
                break;
            case 's':
                Stream(tick, command, repeated);
                break;
            case 'v':
                SetLevel(tick, command, repeated);
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

        if (run is { IsOn: true } || Readings.IsOn)
        {
            return "state";
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

        parameters[parameter.Key] = value;
        return null;
    }

    private void Go(long tick, HostLine command, bool repeated)
    {
        var refusal = repeated ? null
            : run is { IsOn: true } || Readings.IsOn ? "state"
            : parameters[RigParameter.IntervalMaximum.Key] < parameters[RigParameter.IntervalMinimum.Key] ? "range"
            : parameters[RigParameter.Actuator.Key] == 2 && parameters[RigParameter.AxisRamp.Key] >= parameters[RigParameter.Hold.Key] ? "range"
            : null;
        Answer(tick, command, refusal);
        if (refusal is null && !repeated)
        {
            ring.Clear();
            Array.Clear(counts);
            var listener = new SimulatedRunListener(OnPressed, OnHostTold, OnFinished, OnEnded);
            run = new SimulatedRun(parameters.ToDictionary(), options, chain, scale, listener, tick);
        }
    }

    private void Stream(long tick, HostLine command, bool repeated)
    {
        var refusal = !repeated && (run is { IsOn: true } || Readings.IsOn) ? "state" : null;
        Answer(tick, command, refusal);
        if (refusal is null && !repeated)
        {
            Readings.Begin(tick, parameters[RigParameter.ReadingInterval.Key]);
        }
    }

    private void SetLevel(long tick, HostLine command, bool repeated)
    {
        if (command.Fields.Count != 1 || command.Number32(0, 4) is not { } asked)
        {
            Answer(tick, command, "form");
        }
        else if (run is { IsOn: true })
        {
            Answer(tick, command, "state");
        }
        else
        {
            var (level, taken) = Readings.SetLevel(tick, (ushort)asked, repeated);
            Say(tick, $"V {boot:x4} {command.Number:x2} {level:x4} {Counter(taken):x12}");
        }
    }

    private void Resend(long tick, HostLine command)
    {
        if (command.Number32(0, 8) is not { } from || command.Number32(1, 2) is not { } count)
        {
            Answer(tick, command, "form");
            return;
        }

        var asked = ring.Where(held => held.Sequence >= from && held.Sequence - from < count).ToList();
        var refusal = from == 0 || count == 0 ? "range" : asked.Count < count ? "gone" : null;
        Answer(tick, command, refusal);
        if (refusal is null)
        {
            asked.ForEach(held => send(tick, held.Frame));
        }
    }

    private void OnPressed(SimulatedTrial trial) =>
        injected.Add(new InjectedPress(trial.Sequence, trial.PressTick - counterOrigin, trial.InjectedLatencyTicks, trial.TrueLatencyUs));

    private void OnHostTold(double us) => HostTold?.Invoke(us, parameters[RigParameter.Hold.Key]);

    private void OnFinished(long tick, SimulatedTrial trial)
    {
        counts[(int)trial.Outcome]++;
        var latency = trial.ResponseTick - trial.PressTick is { } ticks ? ticks.ToString("x8", CultureInfo.InvariantCulture) : "-";
        var outcome = trial.Outcome switch { Outcome.Response => 'r', Outcome.Early => 'e', _ => 'm' };
        var frame = Text($"T {boot:x4} {trial.Sequence:x8} {Counter(trial.PressTick):x12} {latency} {outcome} {(int)trial.Flags:x2} {trial.Edges:x2}");
        ring.Add((trial.Sequence, frame));
        if (ring.Count > Held)
        {
            ring.RemoveAt(0);
        }

        send(tick, frame);
        TrialFinished?.Invoke(trial.Sequence);
    }

    private void OnEnded(long tick, string reason) =>
        Say(tick, $"D {boot:x4} {counts.Sum():x8} {counts[(int)Outcome.Response]:x8} {counts[(int)Outcome.Missed]:x8} {counts[(int)Outcome.Early]:x8} {reason}");

    private ulong Counter(long tick) => (ulong)(tick - counterOrigin) & ((1UL << options.CounterBits) - 1);

    private void SayHello(long tick) =>
        Say(tick, $"B {boot:x4} 01 {resetCause:x2} {options.TickHz:x8} {options.CounterBits:x2} {options.Board} {options.Firmware}");

    private void SayHeartbeat(long tick)
    {
        var state = Readings.IsOn ? 's' : run is not { IsOn: true } ? 'i' : run.Waits ? 'w' : 'r';
        Say(tick, $"P {boot:x4} {Counter(tick):x12} {run?.Last ?? 0:x8} {state} {run?.Unacknowledged ?? 0:x4} {badFrames:x4} 0000");
    }

    private void Answer(long tick, HostLine command, string? refusal) =>
        Say(tick, refusal is null
            ? (FormattableString)$"A {boot:x4} {command.Number:x2} {command.Kind}"
            : $"N {boot:x4} {command.Number:x2} {command.Kind} {refusal}");

    private void Say(long tick, FormattableString text) => send(tick, Text(text));

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
