using Tarry.Rig.HostEvents;
using Tarry.Rig.HostEvents.Echo;
using Tarry.Rig.Link;
using Tarry.Rig.SimulatedBench;
using Tarry.Studies.OpenRuns;
using Tarry.Web.Bench;
using Tarry.Web.Sticks;

namespace Tarry.Web.Tests.Sticks;

/// <summary>The simulated rig, and one device whose stick is turned all the time.</summary>
internal sealed class FakeDevice(TimeProvider time) : IBenchPorts, IHostInputDevice
{
    public const string Path = "/dev/input/event7";

    // So far from one report to the next that rounding to counts never turns it back.
    private const double ReportsATurn = 200;
    private readonly ManualResetEventSlim closed = new();
    private int turned;

    public HostInputDescription Description { get; } = new()
    {
        Path = Path, Name = "Quill 2", Axes = [new InputAxis(0, 0, 255, 128, 0, 0), new InputAxis(1, 0, 255, 128, 0, 0)],
    };

    public InputClock Clock => InputClock.Arrival;

    public long Losses => 0;

    /// <summary>Whether it was closed.</summary>
    public bool IsClosed => closed.IsSet;

    public IReadOnlyList<string> Names() => [SimulatedDefault.Port];

    public IReadOnlyList<HostInputDescription> InputDevices() =>
    [
        Description,
        new() { Path = "/dev/input/event1", Name = "Keys", IsTextKeyboard = true },
        new() { Path = "/dev/input/event2", Name = "Buttons only", Buttons = [0x130] },
        new() { Path = "/dev/hidraw3", Name = "Not open to us", Obstacle = "It may not be read by you." },
    ];

    public (IRigPortSource Source, HostEcho? Echo) Of(OpenRun asked, double? nominalReportHz, long trialsBefore, CancellationToken stop) => throw new NotSupportedException();

    public IRigPortSource Stick(StickCard card, CancellationToken stop) => new BenchPorts(time).Stick(card, stop);

    public IHostInputDevice Device(string path) => path == Path ? this : throw new HostInputException($"There is no input device {path} now.", "Connect it.");

    public IRigPortSource Loop(string port) => throw new NotSupportedException();

    public bool Read(TimeSpan timeout, InputReportHandler onReport)
    {
        closed.Wait(TimeSpan.FromMilliseconds(2));
        var stamp = Clock.Now(time);
        var (sine, cosine) = Math.SinCos(2 * Math.PI * turned++ / ReportsATurn);
        // y grows towards the user, as HID has it.
        onReport(new InputReport
        {
            StampNanoseconds = stamp,
            Events = [new InputEvent(InputCode.Absolute, 0, (int)Math.Round(127.5 + (127.5 * cosine))), new InputEvent(InputCode.Absolute, 1, (int)Math.Round(127.5 - (127.5 * sine)))],
        });
        return true;
    }

    public void Dispose() => closed.Set();
}
