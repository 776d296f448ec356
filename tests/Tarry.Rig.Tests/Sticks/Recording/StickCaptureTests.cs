using Tarry.Rig.HostEvents.Recording;
using Tarry.Rig.SimulatedBench;
using Tarry.Rig.Sticks.Recording;
using Tarry.Studies;
using Tarry.Studies.Sessions;
using Tarry.Studies.Sticks;
using Tarry.Studies.StudyFiles;

namespace Tarry.Rig.Tests.Sticks.Recording;

public sealed class StickCaptureTests : IDisposable
{
    private static readonly SessionKey Key = new("monday", "quill-stick", StickProcedure.Rest);
    private readonly string folder = Directory.CreateTempSubdirectory("tarry-").FullName;
    private readonly Study study;
    private readonly StudyLock held;

    public StickCaptureTests()
    {
        study = Study.Create(Path.Combine(folder, "pads"), "Pads", "quill-stick", 0.5);
        held = study.AcquireLock("tests");
        study.AddCondition(held, new ConditionEntry { Id = "quill-stick", Factors = new Dictionary<string, string>() });
    }

    [Fact]
    public void Record_ToItsEnd_SealsWhatCame()
    {
        var result = Record();
        Assert.True(result.IsComplete);
        Assert.Equal(60_000, study.ReadStick(Key).Samples.Count);
        Assert.Empty(StickCapture.BrokenOff(study));
        Assert.True(File.Exists(StickCapture.FileOf(study, Key)));
    }

    [Fact]
    public void Record_StoppedInMidProcedure_SealsWhatCame()
    {
        using var stop = new CancellationTokenSource();
        var result = Record(progress => Cancel(stop, progress.Seconds > 20), stop.Token);
        Assert.False(result.IsComplete);
        // The first 6 s are not part of the procedure.
        Assert.InRange(study.ReadStick(Key).Samples.Count, 14_000, 14_300);
    }

    [Fact]
    public void Record_StoppedBeforeAnythingOfTheProcedure_KeepsNothingAndCanBeDoneAgain()
    {
        using var stop = new CancellationTokenSource();
        Assert.Null(Record(progress => Cancel(stop, progress.Seconds > 2), stop.Token).Session);
        Assert.False(File.Exists(StickCapture.FileOf(study, Key)));
        Assert.True(Record().IsComplete);
    }

    [Fact]
    public void Record_ThatIsDiscarded_KeepsNothing()
    {
        using var stop = new CancellationTokenSource();
        Assert.Null(Record(progress => Cancel(stop, progress.Seconds > 20), stop.Token, () => true).Session);
        Assert.Empty(study.StickKeys);
        Assert.False(File.Exists(StickCapture.FileOf(study, Key)));
    }

    [Fact]
    public void BrokenOff_FindsBothKindsOfRecordingAndNothingElse()
    {
        Record();
        var recordings = Path.Combine(study.Folder, "recordings");
        File.Copy(StickCapture.FileOf(study, Key), Path.Combine(recordings, "tuesday.quill-stick.rest.txt"));
        File.WriteAllText(
            Path.Combine(recordings, "tuesday.quill-stick.rim-sweep.txt"),
            new RecordingHeader { Device = "Pad", Transport = "host-events", Clock = "a clock" }.ToLine() + "\n");
        File.WriteAllText(Path.Combine(recordings, "tuesday.quill-stick.txt"), new RecordingHeader { Device = "Pad", Transport = "host-events", Clock = "a clock" }.ToLine() + "\n");
        File.WriteAllText(Path.Combine(recordings, "Notes of mine.txt"), "nothing to seal\n");
        Assert.Equal(["tuesday.quill-stick.rest", "tuesday.quill-stick.rim-sweep"], StickCapture.BrokenOff(study).Select(key => key.ToString()));

        Assert.NotNull(new StickCapture(study, held, SessionKey.Parse("tuesday.quill-stick.rest")).Seal());
        Assert.Single(StickCapture.BrokenOff(study));
    }

    public void Dispose()
    {
        held.Dispose();
        Directory.Delete(folder, recursive: true);
    }

    private static void Cancel(CancellationTokenSource stop, bool isDue)
    {
        if (isDue)
        {
            stop.Cancel();
        }
    }

    private StickCaptureResult Record(Action<StickProgress>? told = null, CancellationToken? stop = null, Func<bool>? discards = null)
    {
        var request = new StickRecordingRequest(StickProcedure.Rest);
        return new StickCapture(study, held, Key).Record(
            SimulatedDefault.StickBench(1, request), request, new Told(told ?? (_ => { })), stop ?? TestContext.Current.CancellationToken, discards);
    }

    private sealed class Told(Action<StickProgress> told) : IProgress<StickProgress>
    {
        public void Report(StickProgress value) => told(value);
    }
}
