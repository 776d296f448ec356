using Tarry.Rig.HostEvents;
using Tarry.Rig.HostEvents.Echo;
using Tarry.Rig.Link;
using Tarry.Rig.Runs;
using Tarry.Studies;
using Tarry.Studies.Sessions;
using Tarry.Studies.Trials;
using Tarry.Tests.Emulator;

namespace Tarry.Tests.HostEvents;

/// <summary>The real firmware gets 0x06 from the echo: the same thread, trigger and serial port as on a bench; the device's reports come from the emulator.</summary>
public class EmulatedEchoTests
{
    private const int Trials = 400;

    [Theory]
    [InlineData("328p-16", null)]
    [InlineData("32u4-16", null)]
    [InlineData("32u4-16", Actuation.Reference)]
    public async Task Run_ByEcho_GivesTheInjectedLatencyAndOneByte(string board, string? actuation)
    {
        using var folder = new TemporaryFolder();
        using var bench = new EmulatedBench(
            folder, board, "--response", "echo", "--echo-waits", "--slot-us", "4000", "--noise-us", "150", "--miss-share", "0.02",
            "--input", actuation is null ? "contact" : "usb");
        await ProgramRun.Done("new", folder["study"], "--reference", "pad");
        await ProgramRun.Done("condition", folder["study"], "pad");
        var study = Study.Open(folder["study"]);
        var request = new RunRequest
        {
            Key = new SessionKey("bench", "pad"),
            Trials = Trials,
            Settings = RunRequest.DefaultSettings with { Response = "echo", Actuation = actuation is null ? null : new Actuation(actuation) },
        };
        HostEcho echo;
        using (var held = study.AcquireLock("tests"))
        using (echo = new HostEcho(new HostInputFeed(() => new EmulatedPad(bench)), EchoTrigger.Of(EmulatedPad.What, "BTN_SOUTH", null, false)))
        {
            var run = new CaptureRun(study, held, request, new SerialRigPortSource(bench.Port, forEcho: true), echo: echo);
            Assert.True(run.Run(TestContext.Current.CancellationToken).Completed);
        }

        var session = study.Read(request.Key);
        var errors = FirmwareRunTests.Errors(session, bench.Truth());
        Assert.Equal(Trials, session.Trials.Count);
        Assert.Equal(errors.Count, echo.Delays.Count);

        // simavr takes 11 bits for a byte, 44 us at 250,000 baud, and the receive interrupt reads the counter some microseconds later.
        // Time stands still for the host; an echo that finds a frame of the host on the line waits for it, 81 bytes at most.
        var byteUs = 44.0;
        Assert.All(errors, error => Assert.InRange(error, byteUs - 0.5, (82 * byteUs) + 10));
        Assert.All(errors.Order().Take((int)(0.9 * errors.Count)), error => Assert.InRange(error, byteUs - 0.5, byteUs + 10));
        Assert.True(session.Record.CountsReconciled);
        Assert.DoesNotContain(session.Trials, trial => trial.Outcome is Outcome.Refused or Outcome.Early);
    }

    /// <summary>The emulated device as an input device: each report is a press and its release.</summary>
    private sealed class EmulatedPad(EmulatedBench bench) : IHostInputDevice
    {
        private const ushort Button = 0x130;

        public static HostInputDescription What { get; } = new() { Path = "emulated", Name = "Emulated pad", Buttons = [Button] };

        public HostInputDescription Description => What;

        public InputClock Clock => InputClock.Arrival;

        public long Losses => 0;

        public bool Read(TimeSpan timeout, InputReportHandler onReport)
        {
            if (!bench.Reports.TryTake(out _, timeout))
            {
                return true;
            }

            var stamp = Clock.Now(TimeProvider.System);
            onReport(new InputReport { StampNanoseconds = stamp, Events = [new InputEvent(InputCode.Key, Button, 1)] });
            onReport(new InputReport { StampNanoseconds = stamp, Events = [new InputEvent(InputCode.Key, Button, 0)] });
            return true;
        }

        public void Dispose()
        {
        }
    }
}
