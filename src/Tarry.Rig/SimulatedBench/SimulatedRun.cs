using Tarry.Rig.Frames;
using Tarry.Studies.Trials;

namespace Tarry.Rig.SimulatedBench;

/// <summary>One run of a simulated rig: presses at drawn intervals, waits for responses, time-outs, quiet and the host.</summary>
internal sealed class SimulatedRun
{
    private const int Held = 24;
    private const uint LightSource = 1;
    private const uint EchoSource = 2;
    private readonly IReadOnlyDictionary<string, uint> parameters;
    private readonly SimulatedRigOptions options;
    private readonly SimulatedChain chain;
    private readonly TickScale scale;
    private readonly SimulatedRunListener listener;
    private readonly IntervalGenerator intervals;
    private SimulatedTrial? trial;
    private long pressTick;
    private long finishTick = long.MaxValue;
    private long? strayEdgeTick;
    private bool stopping;
    private bool waitedForHost;
    private uint acknowledged;

    public SimulatedRun(
        IReadOnlyDictionary<string, uint> parameters,
        SimulatedRigOptions options,
        SimulatedChain chain,
        TickScale scale,
        SimulatedRunListener listener,
        long beginTick)
    {
        this.parameters = parameters;
        this.options = options;
        this.chain = chain;
        this.scale = scale;
        this.listener = listener;
        intervals = new IntervalGenerator(parameters[RigParameter.Seed.Key]);
        First = parameters[RigParameter.FirstSequence.Key];
        Last = acknowledged = First - 1;
        pressTick = beginTick + DrawInterval();
    }

    /// <summary>Whether it still presses.</summary>
    public bool IsOn { get; private set; } = true;

    /// <summary>The first trial's number.</summary>
    public uint First { get; }

    /// <summary>The newest finished trial.</summary>
    public uint Last { get; private set; }

    /// <summary>Finished trials that the host has not acknowledged.</summary>
    public uint Unacknowledged => Last - acknowledged;

    /// <summary>Whether the next press waits for the host.</summary>
    public bool Waits => IsOn && trial is null && Unacknowledged >= Held;

    /// <summary>When the next press is due; never while a trial is in flight.</summary>
    public long PressDue => IsOn && trial is null && !Waits ? pressTick : long.MaxValue;

    /// <summary>When something happens next.</summary>
    public long NextTick => Math.Min(PressDue, finishTick);

    /// <summary>Does what is due at a tick.</summary>
    public void Act(long tick)
    {
        if (finishTick <= tick)
        {
            Finish(tick);
        }
        else if (PressDue <= tick)
        {
            Press(tick);
        }
    }

    /// <summary>Ends the run after the trial in flight.</summary>
    public void Stop(long tick)
    {
        stopping = true;
        if (IsOn && trial is null)
        {
            End(tick, "stop");
        }
    }

    /// <summary>The host has trials up to this one on its disk.</summary>
    public void Acknowledge(long tick, uint sequence)
    {
        var waited = Waits;
        acknowledged = Math.Max(acknowledged, Math.Min(sequence, Last));
        if (waited && !Waits && pressTick < tick)
        {
            pressTick = tick;
            waitedForHost = true;
        }
    }

    /// <summary>The echo byte came.</summary>
    public void TakeEcho(long tick)
    {
        if (trial is null || parameters[RigParameter.ResponseSource.Key] != EchoSource)
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

    private void Press(long tick)
    {
        trial = new SimulatedTrial(Last + 1, tick);
        trial.Flags |= waitedForHost ? TrialFlags.WaitedForHost : TrialFlags.None;
        trial.Flags |= strayEdgeTick is not null ? TrialFlags.StrayEdgeBefore : TrialFlags.None;
        waitedForHost = false;
        strayEdgeTick = null;
        if (parameters[RigParameter.ResponseSource.Key] == EchoSource)
        {
            TellHost(trial);
        }
        else
        {
            Respond(trial);
        }

        listener.Pressed(trial);
        finishTick = FinishOf(trial);
        pressTick = tick + DrawInterval();
    }

    /// <summary>Whether the rig ever sees it is the host's doing.</summary>
    private void TellHost(SimulatedTrial pressed)
    {
        var contactUs = scale.ToMicroseconds(pressed.PressTick) + options.ActuatorDelayUs;
        var response = chain.PressSeenByHost(contactUs, SimulatedAxis.Of(parameters));
        if (!response.ActiveAtPress && response.LatencyUs is { } us)
        {
            pressed.TrueLatencyUs = us;
            listener.HostTold(contactUs + us);
        }
    }

    private void Respond(SimulatedTrial pressed)
    {
        var contactUs = scale.ToMicroseconds(pressed.PressTick) + options.ActuatorDelayUs;
        var response = SeenBySensor(chain.Press(contactUs, SimulatedAxis.Of(parameters)));
        pressed.TrueLatencyUs = response.LatencyUs;
        pressed.InjectedLatencyTicks = response.ActiveAtPress ? 0
            : response.LatencyUs is { } us ? scale.ToTicks(options.ActuatorDelayUs + us + SensorDelayUs)
            : null;
        pressed.Flags |= response.ActiveAtPress ? TrialFlags.LineActiveAtPress : TrialFlags.None;
        pressed.Flags |= response.Edges > 1 ? TrialFlags.Bounced : TrialFlags.None;
        var due = pressed.PressTick + pressed.InjectedLatencyTicks;
        if (pressed.InjectedLatencyTicks <= Ticks(RigParameter.TimeOut))
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
    }

    private bool ByLight => parameters[RigParameter.ResponseSource.Key] == LightSource;

    private double SensorDelayUs => ByLight ? options.ThresholdDelayUs : 0;

    /// <summary>What a light sensor makes of the effect at the present threshold.</summary>
    private SimulatedResponse SeenBySensor(SimulatedResponse response)
    {
        var threshold = (int)parameters[RigParameter.Threshold.Key];
        return !ByLight ? response
            : threshold <= options.LightWhenDark ? new SimulatedResponse(0, 0, true)
            : threshold > options.LightWhenBright ? default
            : response;
    }

    private void Finish(long tick)
    {
        var done = trial!;
        trial = null;
        finishTick = long.MaxValue;
        Last = done.Sequence;
        var latency = done.ResponseTick - done.PressTick;
        var isEarly = done.Flags.HasFlag(TrialFlags.LineActiveAtPress) || latency < Ticks(RigParameter.EarlyMinimum);
        done.Outcome = isEarly ? Outcome.Early : latency is null ? Outcome.Missed : Outcome.Response;
        listener.Finished(tick, done);
        var quiet = strayEdgeTick + Ticks(RigParameter.Rearm) ?? tick;
        pressTick = Math.Max(pressTick, Math.Max(tick, quiet));
        var count = parameters[RigParameter.Count.Key];
        if (stopping || (count > 0 && Last - First + 1 >= count))
        {
            End(tick, stopping ? "stop" : "count");
        }
    }

    private void End(long tick, string reason)
    {
        IsOn = false;
        listener.Ended(tick, reason);
    }

    private long FinishOf(SimulatedTrial inFlight) =>
        Math.Max(
            inFlight.PressTick + Ticks(RigParameter.Hold),
            inFlight.ResponseTick ?? inFlight.PressTick + Ticks(RigParameter.TimeOut))
        + Ticks(RigParameter.Rearm);

    private long DrawInterval() => intervals.Next(Ticks(RigParameter.IntervalMinimum), Ticks(RigParameter.IntervalMaximum));

    private long Ticks(RigParameter parameter) => (long)parameters[parameter.Key] * options.TickHz / 1_000_000;
}
