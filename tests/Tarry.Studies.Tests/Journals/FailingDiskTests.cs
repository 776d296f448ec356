using Tarry.Studies.Journals;
using Tarry.Studies.Sessions;

namespace Tarry.Studies.Tests.Journals;

public sealed class FailingDiskTests
{
    private static readonly SessionKey _key = new("monday", "quill-usb");

    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    [InlineData(57)]
    [InlineData(300)]
    [InlineData(1000)]
    public void Append_DiskFillsUp_IsToldAndWhatWasDurableIsRead(int space)
    {
        using var scratch = new ScratchStudy("quill-usb");
        using var held = scratch.Study.AcquireLock("test");
        scratch.Study.Begin(held, ScratchStudy.Record()).Dispose();
        var path = scratch.PathOf("sessions/monday.quill-usb/journal.log");
        var header = JournalReader.Read(scratch.Study.Paths, _key);
        long durable;
        using (var disk = new FullDisk(JournalWriter.Open(scratch.Study.Paths, _key), header.WholeBytes + space))
        using (var recorder = new SessionRecorder(header.State, new JournalWriter(disk, _key, header.Lines, header.WholeBytes), "journal.log", () => throw new InvalidOperationException()))
        {
            var error = Assert.Throws<StudyDiskException>(() =>
            {
                for (var sequence = 1; sequence <= 1000; sequence++)
                {
                    recorder.Append(ScratchStudy.Response(sequence));
                    if (sequence % 5 == 0)
                    {
                        recorder.Flush();
                    }
                }
            });
            durable = recorder.DurableSequence;
            Assert.Contains("full", error.Message, StringComparison.Ordinal);
            Assert.Contains($"up to {durable} are safe", error.Message, StringComparison.Ordinal);
            Assert.Throws<StudyDiskException>(() => recorder.Append(ScratchStudy.Response(2000)));
            Assert.Throws<StudyDiskException>(recorder.Flush);
            Assert.Throws<StudyDiskException>(recorder.Seal);
        }

        Assert.True(File.Exists(path));
        var read = scratch.Study.Read(_key).Trials;
        Assert.Equal(Enumerable.Range(1, (int)durable).Select(sequence => ScratchStudy.Response(sequence)), read.Take((int)durable));
        Assert.True(StudyCheck.Run(scratch.Study).Passed);
        using var again = scratch.Study.Resume(held, _key);
        again.Append(ScratchStudy.Response(read.Count + 1));
        Assert.Equal(read.Count + 1, again.Seal().Trials.Count);
    }

    // A device of Linux that is always full gives the operating system's own error.
    [Fact]
    public void Describe_RealFullDevice_SaysThatTheDiskIsFull()
    {
        Tarry.Tests.Requirement.Needs(File.Exists("/dev/full"), "the device /dev/full");
        var error = Assert.ThrowsAny<IOException>(() => File.WriteAllBytes("/dev/full", [1]));
        Assert.StartsWith("The disk is full: here.", Studies.Disk.DiskFault.Describe(error, "here").Message, StringComparison.Ordinal);
    }

    /// <summary>A file on a disk with only so much space, which takes what fits and then fails, as a real one does.</summary>
    private sealed class FullDisk(Stream inner, long space) : Stream
    {
        // ENOSPC of Linux and macOS.
        private const int NoSpace = 28;

        public override bool CanRead => false;

        public override bool CanSeek => true;

        public override bool CanWrite => true;

        public override long Length => inner.Length;

        public override long Position { get => inner.Position; set => inner.Position = value; }

        public override void Flush() => inner.Flush();

        public override int Read(byte[] buffer, int offset, int count) => throw new NotSupportedException();

        public override long Seek(long offset, SeekOrigin origin) => inner.Seek(offset, origin);

        public override void SetLength(long value) => inner.SetLength(value);

        public override void Write(byte[] buffer, int offset, int count) => Write(buffer.AsSpan(offset, count));

        public override void Write(ReadOnlySpan<byte> buffer)
        {
            var fits = (int)Math.Min(buffer.Length, Math.Max(0, space - Position));
            inner.Write(buffer[..fits]);
            if (fits < buffer.Length)
            {
                throw new IOException("No space left on device", NoSpace);
            }
        }

        protected override void Dispose(bool disposing)
        {
            inner.Dispose();
            base.Dispose(disposing);
        }
    }
}
