using Tarry.Studies.Sessions;
using Tarry.Studies.Trials;

namespace Tarry.Studies.Tests;

public sealed class SessionRecorderTests
{
    private static readonly SessionKey _key = new("monday", "quill-usb");

    [Fact]
    public void Append_OneTrial_IsDurableSoonWithoutBeingAsked()
    {
        using var scratch = new ScratchStudy("quill-usb");
        using var held = scratch.Study.AcquireLock("test");
        using var recorder = scratch.Study.Begin(held, ScratchStudy.Record());
        using var safe = new ManualResetEventSlim();
        recorder.Durable += sequence =>
        {
            Assert.Equal(1, sequence);
            safe.Set();
        };
        recorder.Append(ScratchStudy.Response(1));
        // Far above the 100 ms, for a busy machine.
        Assert.True(safe.Wait(TimeSpan.FromSeconds(5), TestContext.Current.CancellationToken));
        Assert.Equal(ScratchStudy.Response(1), Assert.Single(scratch.Study.Read(_key).Trials));
    }

    [Fact]
    public void DurableSequence_ATrialIsMissing_StopsBeforeTheGap()
    {
        using var scratch = new ScratchStudy("quill-usb");
        using var held = scratch.Study.AcquireLock("test");
        using var recorder = scratch.Study.Begin(held, ScratchStudy.Record());
        foreach (var sequence in new[] { 1, 2, 4, 5 })
        {
            recorder.Append(ScratchStudy.Response(sequence));
        }

        recorder.Flush();
        Assert.Equal(2, recorder.DurableSequence);
        recorder.Append(ScratchStudy.Response(3));
        recorder.Flush();
        Assert.Equal(5, recorder.DurableSequence);
        Assert.Equal([1, 2, 3, 4, 5], recorder.Trials.Select(trial => trial.Sequence));
    }

    [Fact]
    public void Append_SequenceThatIsThere_IsRefusedAndLeavesTheRest()
    {
        using var scratch = new ScratchStudy("quill-usb");
        using var held = scratch.Study.AcquireLock("test");
        using var recorder = scratch.Study.Begin(held, ScratchStudy.Record());
        recorder.Append(ScratchStudy.Response(1));
        Assert.Throws<ArgumentException>(() => recorder.Append(ScratchStudy.Missed(1)));
        Assert.Throws<ArgumentException>(() => recorder.Append(ScratchStudy.Response(2, segment: 1)));
        recorder.Append(ScratchStudy.Response(2));
        Assert.Equal([ScratchStudy.Response(1), ScratchStudy.Response(2)], recorder.Seal().Trials);
    }

    [Fact]
    public void Seal_EverythingRecorded_ReadsBackTheSame()
    {
        using var scratch = new ScratchStudy("quill-usb");
        using var held = scratch.Study.AcquireLock("test");
        var initial = ScratchStudy.Record();
        var fit = new ClockFitRecord(-41.25, 0.5, 12, 30.5);
        using (var recorder = scratch.Study.Begin(held, initial))
        {
            recorder.Append(ScratchStudy.Missed(2));
            recorder.Append(ScratchStudy.Response(1));
            recorder.SetClockFit(0, fit);
            Assert.Equal(1, recorder.BeginSegment(new Segment(8, 3, 8_000_000, null)));
            recorder.Append(ScratchStudy.Response(3, segment: 1));
            recorder.AddRefused(new RefusedItem("byte 17", "checksum wrong"));
            recorder.AddEvent("the rig restarted");
            recorder.SetCountsReconciled(false);
            recorder.Seal();
        }

        var read = Study.Open(scratch.Folder).Read(_key);
        Assert.True(read.Sealed);
        Assert.Equal([ScratchStudy.Response(1), ScratchStudy.Missed(2), ScratchStudy.Response(3, segment: 1)], read.Trials);
        Assert.Equal([initial.Segments[0] with { ClockFit = fit }, new Segment(8, 3, 8_000_000, null)], read.Record.Segments);
        Assert.Equal([new RefusedItem("byte 17", "checksum wrong")], read.Record.Refused);
        Assert.Equal(1, read.Record.RefusedTotal);
        Assert.Equal(["the rig restarted"], read.Record.Events);
        Assert.False(read.Record.CountsReconciled);
        Assert.Equal(initial.Run, read.Record.Run);
        Assert.Equal(initial.Host, read.Record.Host);
        Assert.False(File.Exists(scratch.PathOf("sessions/monday.quill-usb/journal.log")));
        Assert.True(StudyCheck.Run(scratch.Study).Passed);
    }

    [Fact]
    public void Resume_AfterATornLine_GoesOnAndTellsIt()
    {
        using var scratch = new ScratchStudy("quill-usb");
        using var held = scratch.Study.AcquireLock("test");
        using (var recorder = scratch.Study.Begin(held, ScratchStudy.Record()))
        {
            recorder.Append(ScratchStudy.Response(1));
        }

        var journal = scratch.PathOf("sessions/monday.quill-usb/journal.log");
        File.AppendAllText(journal, "0badf00d t 2 0 32");
        Assert.False(scratch.Study.IsSealed(_key));
        Assert.Contains("torn", Assert.Single(scratch.Study.Read(_key).Record.Events), StringComparison.Ordinal);
        Assert.EndsWith("t 2 0 32", File.ReadAllText(journal), StringComparison.Ordinal);

        using (var recorder = scratch.Study.Resume(held, _key))
        {
            Assert.Equal(1, recorder.DurableSequence);
            Assert.Equal(ScratchStudy.Response(1), Assert.Single(recorder.Trials));
            recorder.Append(ScratchStudy.Response(2));
            recorder.Seal();
        }

        var read = scratch.Study.Read(_key);
        Assert.Equal(2, read.Trials.Count);
        Assert.Contains("torn", Assert.Single(read.Record.Events), StringComparison.Ordinal);
    }

    [Fact]
    public void Resume_SealedSession_IsRefused()
    {
        using var scratch = new ScratchStudy("quill-usb");
        scratch.Seal();
        using var held = scratch.Study.AcquireLock("test");
        Assert.Contains("sealed", Assert.Throws<StudyException>(() => scratch.Study.Resume(held, _key)).Message, StringComparison.Ordinal);
        Assert.Contains("already", Assert.Throws<StudyException>(() => scratch.Study.Begin(held, ScratchStudy.Record())).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Recorder_AfterTheSeal_TakesNothingMore()
    {
        using var scratch = new ScratchStudy("quill-usb");
        using var held = scratch.Study.AcquireLock("test");
        var recorder = scratch.Study.Begin(held, ScratchStudy.Record());
        Assert.Empty(recorder.Seal().Trials);
        Assert.Throws<ObjectDisposedException>(() => recorder.Append(ScratchStudy.Response(1)));
        Assert.Throws<ObjectDisposedException>(recorder.Seal);
        recorder.Dispose();
        Assert.Empty(scratch.Study.Read(_key).Trials);
    }

    [Fact]
    public void Begin_FolderLeftEmptyByAKill_IsUsed()
    {
        using var scratch = new ScratchStudy("quill-usb");
        Directory.CreateDirectory(scratch.PathOf("sessions/monday.quill-usb"));
        File.WriteAllText(scratch.PathOf("sessions/monday.quill-usb/journal.log.tmp"), "half");
        Assert.Empty(scratch.Study.SessionKeys);
        Assert.True(StudyCheck.Run(scratch.Study).Passed);
        scratch.Seal();
        Assert.True(scratch.Study.IsSealed(_key));
    }

    [Fact]
    public void AcquireLock_JournalThatSaysMoreThanTheSealedSession_IsKeptAndTold()
    {
        using var scratch = new ScratchStudy("quill-usb");
        var journal = scratch.PathOf("sessions/monday.quill-usb/journal.log");
        using (var held = scratch.Study.AcquireLock("test"))
        using (var recorder = scratch.Study.Begin(held, ScratchStudy.Record()))
        {
            recorder.Append(ScratchStudy.Response(1));
            recorder.Flush();
            recorder.Seal();
        }

        using (var other = new ScratchStudy("quill-usb"))
        {
            using var held = other.Study.AcquireLock("test");
            using var recorder = other.Study.Begin(held, ScratchStudy.Record());
            recorder.Append(ScratchStudy.Response(1));
            recorder.Append(ScratchStudy.Response(2));
            recorder.Flush();
            File.Copy(other.PathOf("sessions/monday.quill-usb/journal.log"), journal);
        }

        scratch.Study.AcquireLock("test").Dispose();
        Assert.True(File.Exists(journal));
        Assert.Equal(StudyProblemKind.JournalDamaged, Assert.Single(StudyCheck.Run(scratch.Study).Problems).Kind);
        Assert.Single(scratch.Study.Read(_key).Trials);
    }

    [Fact]
    public void Begin_UndeclaredCondition_IsRefusedAndMakesNothing()
    {
        using var scratch = new ScratchStudy();
        using var held = scratch.Study.AcquireLock("test");
        Assert.Throws<StudyException>(() => scratch.Study.Begin(held, ScratchStudy.Record()));
        Assert.False(Directory.Exists(scratch.PathOf("sessions")));
    }

    [Fact]
    public void Seal_AtAnyStepInterrupted_FinishesOrStaysOpen()
    {
        using var scratch = new ScratchStudy("quill-usb");
        using (var held = scratch.Study.AcquireLock("test"))
        using (var recorder = scratch.Study.Begin(held, ScratchStudy.Record()))
        {
            recorder.Append(ScratchStudy.Response(1));
        }

        var journal = scratch.PathOf("sessions/monday.quill-usb/journal.log");
        var bytes = File.ReadAllBytes(journal);
        // As after a crash between the rename and the manifest: the journal is what counts.
        File.WriteAllText(scratch.PathOf("sessions/monday.quill-usb/trials.parquet"), "half");
        File.WriteAllText(scratch.PathOf("sessions/monday.quill-usb/session.json.tmp"), "half");
        Assert.False(scratch.Study.Read(_key).Sealed);
        Assert.True(StudyCheck.Run(scratch.Study).Passed);
        using (var held = scratch.Study.AcquireLock("test"))
        using (var recorder = scratch.Study.Resume(held, _key))
        {
            recorder.Seal();
        }

        // As after a crash between the manifest and the end: sealed, and the journal goes with the next writer.
        File.WriteAllBytes(journal, bytes);
        Assert.True(scratch.Study.Read(_key).Sealed);
        Assert.True(StudyCheck.Run(scratch.Study).Passed);
        using (scratch.Study.AcquireLock("test"))
        {
            Assert.False(File.Exists(journal));
        }

        Assert.Equal(ScratchStudy.Response(1), Assert.Single(scratch.Study.Read(_key).Trials));
    }
}
