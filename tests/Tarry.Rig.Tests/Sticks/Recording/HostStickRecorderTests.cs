using System.Buffers.Binary;
using Tarry.Rig.HostEvents;
using Tarry.Rig.HostEvents.Recording;
using Tarry.Rig.Sticks.Recording;
using Tarry.Studies.Sessions;
using Tarry.Studies.Sticks;

namespace Tarry.Rig.Tests.Sticks.Recording;

public sealed class HostStickRecorderTests : IDisposable
{
    private static readonly RecordedCode[] Codes = [new(InputCode.Absolute, 0), new(InputCode.Absolute, 1)];
    private readonly string folder = Directory.CreateTempSubdirectory("tarry-").FullName;
    private readonly SteppedTime time = new();

    private string FileName => Path.Combine(folder, "recordings", "monday.pad.rest.txt");

    [Fact]
    public void Run_OfRest_KeepsTheReportsOfItsKeptStepOnly()
    {
        using var device = new TurningStick(time);
        List<StickProgress> told = [];
        Assert.True(Recorder(device, told.Add, readySeconds: 1).Run(FileName, TestContext.Current.CancellationToken));
        var (session, _) = RecordedSession.Read(FileName, new SessionKey("monday", "pad", StickProcedure.Rest), _ => throw new InvalidOperationException());

        // A report every 20 ms for 60 s, after 1 s to take hold and 6 s that are no part of it; at either end one may be of the step beside.
        Assert.InRange(session.Reports.Count, 2_999, 3_001);
        var stamps = Enumerable.Range(0, session.Reports.Count).Select(session.Reports.Tick).ToList();
        Assert.Equal(20_000_000, stamps[1] - stamps[0]);
        Assert.Equal((1, 0), (told[0].SecondsLeft, told[0].Readings));
        Assert.Equal(session.Reports.Count, told[^1].Readings);
    }

    [Fact]
    public void Run_ThatIsStopped_KeepsWhatCame()
    {
        using var device = new TurningStick(time);
        using var stop = new CancellationTokenSource();
        Assert.False(Recorder(device, progress =>
        {
            if (progress.Seconds > 16)
            {
                stop.Cancel();
            }
        }).Run(FileName, stop.Token));
        Assert.InRange(File.ReadLines(FileName).Count() - 1, 499, 502);
    }

    [Fact]
    public void Run_WhoseDeviceGoes_KeepsWhatCameAndSaysSo()
    {
        using var device = new TurningStick(time) { GoesAfterSeconds = 10 };
        Assert.False(Recorder(device).Run(FileName, TestContext.Current.CancellationToken));
        Assert.Equal("e the device went: unplugged, or switched off", File.ReadLines(FileName).Last());
    }

    [Fact]
    public void Run_WhoseDeviceGoesBeforeTheFirstStep_BeginsNothing()
    {
        using var device = new TurningStick(time) { GoesAfterSeconds = 0.5 };
        Assert.Throws<HostInputException>(() => Recorder(device, readySeconds: 3).Run(FileName, TestContext.Current.CancellationToken));
        Assert.False(File.Exists(FileName));
    }

    public void Dispose() => Directory.Delete(folder, recursive: true);

    private HostStickRecorder Recorder(TurningStick device, Action<StickProgress>? told = null, double readySeconds = 0) => new(
        device,
        Codes,
        new StickRecordingRequest(StickProcedure.Rest) { ReadySeconds = readySeconds },
        report => (BinaryPrimitives.ReadInt32LittleEndian(report) / 100.0, BinaryPrimitives.ReadInt32LittleEndian(report[4..]) / 100.0),
        new Told(told ?? (_ => { })),
        time);

    private sealed class Told(Action<StickProgress> told) : IProgress<StickProgress>
    {
        public void Report(StickProgress value) => told(value);
    }

    private sealed class SteppedTime : TimeProvider
    {
        public long Milliseconds { get; set; }

        public override long TimestampFrequency => 1_000;

        public override long GetTimestamp() => Milliseconds;
    }

    /// <summary>A stick that is turned all the time: a report a wait, and time goes on by the wait.</summary>
    private sealed class TurningStick(SteppedTime time) : IHostInputDevice
    {
        public double GoesAfterSeconds { get; init; } = double.PositiveInfinity;

        public HostInputDescription Description { get; } = new()
        {
            Path = "stick", Name = "Stick", Axes = [new InputAxis(0, -100, 100, 0, 0, 0), new InputAxis(1, -100, 100, 0, 0, 0)],
        };

        public InputClock Clock => InputClock.Arrival;

        public long Losses => 0;

        public bool Read(TimeSpan timeout, InputReportHandler onReport)
        {
            time.Milliseconds += (long)timeout.TotalMilliseconds;
            if (time.Milliseconds / 1_000.0 > GoesAfterSeconds)
            {
                return false;
            }

            var (sine, cosine) = Math.SinCos(time.Milliseconds / 1_000.0);
            onReport(new InputReport
            {
                StampNanoseconds = time.Milliseconds * 1_000_000,
                Events = [new InputEvent(InputCode.Absolute, 0, (int)(100 * cosine)), new InputEvent(InputCode.Absolute, 1, (int)(100 * sine))],
            });
            return true;
        }

        public void Dispose()
        {
        }
    }
}
