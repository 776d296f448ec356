using Tarry.Studies.Sessions;
using Tarry.Studies.StudyFiles;

namespace Tarry.Studies.Tests;

public sealed class StudyOutlineTests
{
    [Fact]
    public void Outline_OfSealedAndOpenSessions_CountsTheSealedOnesAlone()
    {
        using var scratch = new ScratchStudy("quill-usb", "bench-board");
        using var held = scratch.Study.AcquireLock("test");
        using (var recorder = scratch.Study.Begin(held, ScratchStudy.Record()))
        {
            recorder.Append(ScratchStudy.Response(1));
            recorder.Append(ScratchStudy.Missed(2));
            recorder.Seal();
        }

        using (var recorder = scratch.Study.Begin(held, ScratchStudy.Record(condition: "bench-board")))
        {
            recorder.Append(ScratchStudy.Response(1));
            recorder.Flush();
        }

        Assert.Equal(
            [("monday.bench-board", false, null), ("monday.quill-usb", true, 2L)],
            scratch.Study.Outline.Select(session => (session.Key.ToString(), session.IsSealed, session.Trials)));
        Assert.Equal(scratch.Study.SessionKeys, scratch.Study.Outline.Select(session => session.Key));
    }

    [Fact]
    public void Outline_OfADamagedRecord_LeavesItsCountOut()
    {
        using var scratch = new ScratchStudy("quill-usb");
        using (var held = scratch.Study.AcquireLock("test"))
        {
            scratch.Study.SealImported(held, [(ScratchStudy.Record(), [ScratchStudy.Response(1)])], ScratchStudy.Import(), []);
        }

        File.WriteAllText(Path.Combine(scratch.Folder, "sessions", "monday.quill-usb", "session.json"), "{");
        Assert.Null(Assert.Single(scratch.Study.Outline).Trials);
    }

    [Fact]
    public void RemoveCondition_WithSessionsOrExclusions_IsRefusedAndChangesNothing()
    {
        using var scratch = new ScratchStudy("quill-usb", "sedge");
        using var held = scratch.Study.AcquireLock("test");
        scratch.Study.SealImported(held, [(ScratchStudy.Record(), [ScratchStudy.Response(1)])], ScratchStudy.Import(), []);
        scratch.Study.AddExclusion(held, new Exclusion(new SessionKey("monday", "sedge"), "cap", null, null));
        var before = File.ReadAllText(Path.Combine(scratch.Folder, "study.toml"));
        Assert.Contains("1 session", Assert.Throws<StudyException>(() => scratch.Study.RemoveCondition(held, "quill-usb")).Message, StringComparison.Ordinal);
        Assert.Throws<StudyException>(() => scratch.Study.RemoveCondition(held, "sedge"));
        Assert.Throws<StudyException>(() => scratch.Study.RemoveCondition(held, "nobody"));
        Assert.Equal(before, File.ReadAllText(Path.Combine(scratch.Folder, "study.toml")));
    }

    [Fact]
    public void Undo_OfARemoval_BringsTheFileBackUnlessItWasChangedSince()
    {
        using var scratch = new ScratchStudy("quill-usb", "sedge");
        using var held = scratch.Study.AcquireLock("test");
        var file = Path.Combine(scratch.Folder, "study.toml");
        var before = File.ReadAllText(file);
        scratch.Study.Undo(held, scratch.Study.RemoveCondition(held, "sedge"));
        Assert.Equal(before, File.ReadAllText(file));

        var change = scratch.Study.RemoveCondition(held, "sedge");
        scratch.Study.SetTitle(held, "Another");
        var changed = File.ReadAllText(file);
        Assert.Throws<StudyException>(() => scratch.Study.Undo(held, change));
        Assert.Equal(changed, File.ReadAllText(file));
    }
}
