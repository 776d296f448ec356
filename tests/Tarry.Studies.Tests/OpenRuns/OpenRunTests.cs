using Tarry.Studies.OpenRuns;
using Tarry.Studies.Sessions;

namespace Tarry.Studies.Tests.OpenRuns;

public sealed class OpenRunTests : IDisposable
{
    private static readonly SessionKey Key = new("monday", "quill-usb");

    private static readonly OpenRun Run = new()
    {
        Port = "/dev/ttyACM0",
        Speed = 20,
        Run = new RunSettings("echo", 70_000, 120_000, 20_000, 60_000, 10_000, 7) { Actuation = new Actuation("axis", new AxisActuation("dac", 0, 65_535, 32_768, 1_500)) },
        HalfWidthMs = 0.05,
        LightThreshold = 90,
        FallingEdge = true,
        Echo = new OpenRunEcho("/dev/input/event3", "ABS_Z", 512, true, false),
        RoomNotes = "lamp \u201coff\u201d",
    };

    private readonly ScratchStudy scratch = new("quill-usb");

    public void Dispose() => scratch.Dispose();

    [Fact]
    public void Keep_ThenOpenAgain_ReadsTheSameAndTheCheckHasNothingToSay()
    {
        using (var held = scratch.Study.AcquireLock("test"))
        {
            scratch.Study.KeepOpenRun(held, Key, Run);
        }

        Assert.Equal(Run, Study.Open(scratch.Folder).OpenRunOf(Key));
        Assert.Null(scratch.Study.OpenRunOf(new SessionKey("tuesday", "quill-usb")));
        Assert.True(StudyCheck.Run(scratch.Study).Passed);
        Assert.Contains("\"half_width_ms\": 0.05", File.ReadAllText(scratch.PathOf("open-runs/monday.quill-usb.json")), StringComparison.Ordinal);
    }

    [Fact]
    public void Forget_LastOne_LeavesNothing()
    {
        using var held = scratch.Study.AcquireLock("test");
        scratch.Study.KeepOpenRun(held, Key, Run);
        scratch.Study.ForgetOpenRun(held, Key);
        scratch.Study.ForgetOpenRun(held, Key);
        Assert.Null(scratch.Study.OpenRunOf(Key));
        Assert.False(Directory.Exists(scratch.PathOf("open-runs")));
    }

    [Theory]
    [InlineData("")]
    [InlineData("{")]
    [InlineData("{\"format_version\": 1}")]
    [InlineData("{\"format_version\": 99, \"open_run\": {\"port\": \"x\", \"run\": null}}")]
    public void OpenRunOf_FileThatCannotBeRead_IsAsIfItWereNotThere(string text)
    {
        Directory.CreateDirectory(scratch.PathOf("open-runs"));
        File.WriteAllText(scratch.PathOf("open-runs/monday.quill-usb.json"), text);
        Assert.Null(scratch.Study.OpenRunOf(Key));
    }
}
