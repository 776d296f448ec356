using Microsoft.Extensions.Time.Testing;

namespace Tarry.Studies.Tests;

public sealed class StudyLockTests
{
    [Fact]
    public void AcquireLock_HeldByAnother_SaysWhoAndReadingGoesOn()
    {
        using var scratch = new ScratchStudy("quill-usb");
        scratch.Seal();
        var time = new FakeTimeProvider(new DateTimeOffset(2026, 3, 4, 5, 6, 7, TimeSpan.Zero));
        using (Study.Open(scratch.Folder, time).AcquireLock("tarry run"))
        {
            var error = Assert.Throws<StudyLockedException>(() => Study.Open(scratch.Folder).AcquireLock("tarry import"));
            Assert.Equal(new LockHolder("tarry run", Environment.ProcessId, Environment.MachineName, time.GetUtcNow()), error.Holder);
            Assert.Contains($"tarry run (process {Environment.ProcessId} on {Environment.MachineName}, since 2026-03-04 05:06:07Z)", error.Message, StringComparison.Ordinal);
            Assert.Equal(11, Study.Open(scratch.Folder).Read(scratch.Study.SessionKeys[0]).Trials.Count);
        }

        Study.Open(scratch.Folder).AcquireLock("tarry import").Dispose();
    }

    [Fact]
    public void AcquireLock_LeftBehindByADeadProcess_IsTakenOver()
    {
        using var scratch = new ScratchStudy();
        File.WriteAllText(scratch.PathOf(".lock"), "");
        File.WriteAllText(scratch.PathOf(".lock-holder.json"), """{"program":"tarry run","process_id":999999,"machine":"gone","since":"2026-01-01T00:00:00+00:00"}""");
        using var held = scratch.Study.AcquireLock("test");
        Assert.Equal(Environment.ProcessId, held.Holder.ProcessId);
    }

    [Fact]
    public void Write_WithALockGivenBackOrOfAnotherStudy_IsRefused()
    {
        using var scratch = new ScratchStudy();
        using var other = new ScratchStudy();
        var held = scratch.Study.AcquireLock("test");
        Assert.Throws<ArgumentException>(() => other.Study.SetReference(held, "a"));
        held.Dispose();
        Assert.Throws<ObjectDisposedException>(() => scratch.Study.SetReference(held, "a"));
        Assert.Throws<ArgumentNullException>(() => scratch.Study.SetReference(null!, "a"));
    }
}
