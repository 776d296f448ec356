using Tarry.Rig.Runs;
using Tarry.Rig.SimulatedBench;
using Tarry.Studies.OpenRuns;
using Tarry.Studies.Sessions;

namespace Tarry.Web.Bench;

/// <summary>What a window has filled in for a run, in the units that people use.</summary>
public sealed class RunForm
{
    private const long UsualTrials = 1500;
    private const double UsualHalfWidthMs = 0.05;
    private const double UsPerMs = 1000;
    private static readonly RunSettings Defaults = RunRequest.DefaultSettings;

    /// <summary>The sitting.</summary>
    public string Sitting { get; set; } = "";

    /// <summary>The condition.</summary>
    public string Condition { get; set; } = "";

    /// <summary>The rig's port.</summary>
    public string Port { get; set; } = "";

    /// <summary>Of the simulated bench: its seconds in one; 0 for as fast as it goes.</summary>
    public double Speed { get; set; } = 1;

    /// <summary>When the run has enough.</summary>
    public RunTargetKind Target { get; set; }

    /// <summary>So many trials.</summary>
    public long? Trials { get; set; } = UsualTrials;

    /// <summary>Or the mean known so well.</summary>
    public double? HalfWidthMs { get; set; } = UsualHalfWidthMs;

    /// <summary>What answers.</summary>
    public string Response { get; set; } = Defaults.Response;

    /// <summary>Shortest time from press to press.</summary>
    public double? IntervalMinMs { get; set; } = Defaults.IntervalMinUs / UsPerMs;

    /// <summary>Longest time from press to press.</summary>
    public double? IntervalMaxMs { get; set; } = Defaults.IntervalMaxUs / UsPerMs;

    /// <summary>How long the contact is held closed.</summary>
    public double? HoldMs { get; set; } = Defaults.HoldUs / UsPerMs;

    /// <summary>Nothing within this is a miss.</summary>
    public double? TimeOutMs { get; set; } = Defaults.TimeOutUs / UsPerMs;

    /// <summary>Quiet time before the next press.</summary>
    public double? RearmMs { get; set; } = Defaults.RearmUs / UsPerMs;

    /// <summary>Seed of the press intervals.</summary>
    public uint? Seed { get; set; } = Defaults.Seed;

    /// <summary>Press intervals that hardly vary are allowed.</summary>
    public bool AllowNarrowInterval { get; set; }

    /// <summary>The response edge falls.</summary>
    public bool FallingEdge { get; set; }

    /// <summary>Light threshold in 1/256 of the supply.</summary>
    public long? LightThreshold { get; set; } = 128;

    /// <summary>What the press moves.</summary>
    public string Actuate { get; set; } = Actuation.Contact;

    /// <summary>What moves an axis.</summary>
    public string AxisDrive { get; set; } = AxisActuation.Switch;

    /// <summary>The axis at rest.</summary>
    public int? AxisLow { get; set; } = 0;

    /// <summary>The axis pressed.</summary>
    public int? AxisHigh { get; set; } = 65_535;

    /// <summary>The level whose crossing is the input.</summary>
    public int? AxisThreshold { get; set; } = 32_768;

    /// <summary>Time from rest to pressed.</summary>
    public double? AxisRampMs { get; set; } = 0;

    /// <summary>The input device that is echoed.</summary>
    public string EchoDevice { get; set; } = "";

    /// <summary>What of it is the press; empty for any button.</summary>
    public string EchoCode { get; set; } = "";

    /// <summary>Of an axis: the value whose crossing is the press.</summary>
    public int? EchoLevel { get; set; }

    /// <summary>The axis crosses downwards, or the bit falls.</summary>
    public bool EchoFalling { get; set; }

    /// <summary>Keep the device's events from other programs.</summary>
    public bool EchoExclusive { get; set; }

    /// <summary>The host and its system.</summary>
    public string Host { get; set; } = "";

    /// <summary>The application that shows the response.</summary>
    public string Application { get; set; } = "";

    /// <summary>Its frame cap.</summary>
    public double? FrameCapHz { get; set; }

    /// <summary>The screen's refresh rate.</summary>
    public double? RefreshHz { get; set; }

    /// <summary>State of the device's battery.</summary>
    public string Battery { get; set; } = "";

    /// <summary>Anything about the room or the set-up.</summary>
    public string RoomNotes { get; set; } = "";

    /// <summary>Fills in what a run was asked for.</summary>
    public void Take(SessionKey key, OpenRun asked)
    {
        ArgumentNullException.ThrowIfNull(asked);
        (Sitting, Condition, Port, Speed) = (key.Sitting, key.Condition, asked.Port, asked.Speed ?? 0);
        (Target, Trials, HalfWidthMs) = asked switch
        {
            { Trials: { } trials } => (RunTargetKind.Trials, trials, HalfWidthMs),
            { HalfWidthMs: { } halfWidth } => (RunTargetKind.HalfWidth, Trials, halfWidth),
            _ => (RunTargetKind.ByHand, Trials, HalfWidthMs),
        };
        (FallingEdge, LightThreshold, AllowNarrowInterval) = (asked.FallingEdge, asked.LightThreshold, asked.AllowNarrowInterval);
        (Host, Application, Battery, RoomNotes) = (asked.Host ?? "", asked.Application ?? "", asked.Battery ?? "", asked.RoomNotes ?? "");
        (FrameCapHz, RefreshHz) = (asked.FrameCapHz, asked.RefreshHz);
        if (asked.Echo is { } echo)
        {
            (EchoDevice, EchoCode, EchoLevel, EchoFalling, EchoExclusive) = (echo.Device, echo.Code ?? "", echo.Level, echo.Falling, echo.Exclusive);
        }

        Take(asked.Run);
    }

    /// <summary>The run as filled in.</summary>
    /// <param name="study">The study's name on the shelf.</param>
    /// <exception cref="RunSettingsException">Something is missing or not of its form; the capture checks the rest.</exception>
    public RunCard Card(string study)
    {
        Require(Names.IsName(Sitting), "The sitting needs a name.", "Use lower-case letters, digits, '-' or '_', such as monday.");
        Require(Names.IsName(Condition), "No condition is chosen.", "Choose what is under test; declare it in the study first.");
        Require(Port.Length > 0, "No port is chosen.", "Plug the rig in and look for ports again, or choose the simulated bench.");
        Require(Response != "echo" || EchoDevice.Length > 0 || Port == SimulatedDefault.Port, "No input device of this computer is chosen that tells of the press.", "Choose one under 'What is echoed'.");
        return new RunCard(study, new SessionKey(Sitting, Condition), new OpenRun
        {
            Port = Port,
            Speed = Port == SimulatedDefault.Port && Speed > 0 ? Speed : null,
            Run = new RunSettings(
                Response,
                Microseconds(IntervalMinMs, "shortest time from press to press"),
                Microseconds(IntervalMaxMs, "longest time from press to press"),
                Microseconds(HoldMs, "hold time"),
                Microseconds(TimeOutMs, "time-out"),
                Microseconds(RearmMs, "re-arm time"),
                Given(Seed, "seed"))
            {
                Actuation = Actuate == Actuation.Contact ? null : new Actuation(Actuate, Actuate == Actuation.AxisKind ? Axis() : null),
            },
            Trials = Target == RunTargetKind.Trials ? Given(Trials, "number of trials") : null,
            HalfWidthMs = Target == RunTargetKind.HalfWidth ? Given(HalfWidthMs, "half-width") : null,
            FallingEdge = FallingEdge,
            LightThreshold = Given(LightThreshold, "light threshold"),
            AllowNarrowInterval = AllowNarrowInterval,
            Echo = Response != "echo" ? null : new OpenRunEcho(Port == SimulatedDefault.Port ? SimulatedDefault.Port : EchoDevice, TextOrNull(EchoCode), EchoLevel, EchoFalling, EchoExclusive),
            Host = TextOrNull(Host),
            Application = TextOrNull(Application),
            FrameCapHz = FrameCapHz,
            RefreshHz = RefreshHz,
            Battery = TextOrNull(Battery),
            RoomNotes = TextOrNull(RoomNotes),
        });
    }

    private void Take(RunSettings run)
    {
        (Response, Seed) = (run.Response, run.Seed);
        (IntervalMinMs, IntervalMaxMs) = (run.IntervalMinUs / UsPerMs, run.IntervalMaxUs / UsPerMs);
        (HoldMs, TimeOutMs, RearmMs) = (run.HoldUs / UsPerMs, run.TimeOutUs / UsPerMs, run.RearmUs / UsPerMs);
        Actuate = run.Actuation?.Kind ?? Actuation.Contact;
        if (run.Actuation?.Axis is { } axis)
        {
            (AxisDrive, AxisLow, AxisHigh, AxisThreshold, AxisRampMs) = (axis.Drive, axis.Low, axis.High, axis.Threshold, axis.RampUs / UsPerMs);
        }
    }

    private AxisActuation Axis() => new(
        AxisDrive,
        Given(AxisLow, "level at rest"),
        Given(AxisHigh, "level pressed"),
        Given(AxisThreshold, "axis threshold"),
        Microseconds(AxisRampMs, "ramp"));

    private static long Microseconds(double? milliseconds, string what) => (long)Math.Round(Given(milliseconds, what) * UsPerMs);

    private static string? TextOrNull(string text) => text.Trim() is { Length: > 0 } trimmed ? trimmed : null;

    private static T Given<T>(T? value, string what)
        where T : struct =>
        value ?? throw new RunSettingsException($"The {what} is missing or no number.", "Fill it in.");

    private static void Require(bool holds, string message, string remedy)
    {
        if (!holds)
        {
            throw new RunSettingsException(message, remedy);
        }
    }
}
