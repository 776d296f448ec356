using System.Text;
using Tarry.Metrology;
using Tarry.Studies.Journals;
using Tarry.Studies.Sessions;
using Tarry.Studies.Trials;

namespace Tarry.Studies.Tests.Journals;

public sealed class JournalReaderTests
{
    private const string Place = "sessions/monday.quill-usb/journal.log";
    private static readonly SessionKey _key = new("monday", "quill-usb");

    [Fact]
    public void Read_EveryTruncationPoint_KeepsTheWholeLinesAndTellsTheRest()
    {
        var (journal, trials) = RealJournal();
        var ends = LineEnds(journal);
        for (var length = 0; length < journal.Length; length++)
        {
            var cut = journal.AsSpan(0, length).ToArray();
            if (length < ends[0])
            {
                Assert.Contains("line 1 ", Assert.Throws<StudyDamagedException>(() => JournalReader.Read(cut, _key, Place)).Place, StringComparison.Ordinal);
                continue;
            }

            var reading = JournalReader.Read(cut, _key, Place);
            var whole = ends.Last(end => end <= length);
            Assert.Equal(whole, reading.WholeBytes);
            Assert.Equal(length - whole, reading.TornBytes);
            Assert.Equal(reading.TornBytes > 0, reading.TornNotice is not null);
            Assert.Equal(trials.Take(reading.State.TrialsInOrder().Length), reading.State.TrialsInOrder());
        }
    }

    [Fact]
    public void Read_EveryBitFlip_IsToldAndNeverReadAsATrial()
    {
        var (journal, trials) = RealJournal();
        var ends = LineEnds(journal);
        var flips = 0;
        for (var index = 0; index < journal.Length; index++)
        {
            for (var bit = 0; bit < 8; bit++)
            {
                var damaged = journal.ToArray();
                damaged[index] ^= (byte)(1 << bit);
                // The last line, or the line feed before it, which joins the last two lines into one.
                var inTheEnd = index >= ends[^2] - 1;
                if (inTheEnd)
                {
                    var reading = JournalReader.Read(damaged, _key, Place);
                    Assert.True(reading.TornBytes > 0);
                    Assert.Equal(trials.Take(reading.State.TrialsInOrder().Length), reading.State.TrialsInOrder());
                }
                else
                {
                    var line = ends.Count(end => end <= index) + 1;
                    Assert.Contains($"line {line} ", Assert.Throws<StudyDamagedException>(() => JournalReader.Read(damaged, _key, Place)).Place, StringComparison.Ordinal);
                }

                flips++;
            }
        }

        Assert.True(flips > 5_000, $"{flips} flips are not thousands");
    }

    [Fact]
    public void Read_LinesSwappedDoubledOrLost_AreRefusedWithTheirPlace()
    {
        var lines = Encoding.UTF8.GetString(RealJournal().Journal).Split('\n')[..^1];
        string[] swapped = [.. lines[..3], lines[4], lines[3], .. lines[5..]];
        string[] doubled = [.. lines[..4], lines[3], .. lines[4..]];
        string[] lost = [.. lines[..3], .. lines[4..]];
        Assert.Contains("line 4 ", Refusal(swapped).Place, StringComparison.Ordinal);
        Assert.Contains("line 5 ", Refusal(doubled).Place, StringComparison.Ordinal);
        Assert.Contains("line 4 ", Refusal(lost).Place, StringComparison.Ordinal);
    }

    [Fact]
    public void Read_NewerVersion_SaysThatItIsNewer()
    {
        var line = JournalLine.Encode("monday.quill-usb", 1, "tarry-journal 2 {}");
        var error = Assert.Throws<StudyException>(() => JournalReader.Read(line, _key, Place));
        Assert.Contains("version 2", error.Message, StringComparison.Ordinal);
        Assert.Contains("newer version", error.Remedy, StringComparison.Ordinal);
    }

    [Fact]
    public void Read_ZerosAtTheEnd_AreATornLine()
    {
        // What some file systems leave of a write that a power cut interrupted.
        var (journal, trials) = RealJournal();
        var reading = JournalReader.Read([.. journal, .. new byte[4096]], _key, Place);
        Assert.Equal(4096, reading.TornBytes);
        Assert.Equal(trials, reading.State.TrialsInOrder());
    }

    private static StudyDamagedException Refusal(string[] lines) =>
        Assert.Throws<StudyDamagedException>(() => JournalReader.Read(Encoding.UTF8.GetBytes(string.Join('\n', lines) + "\n"), _key, Place));

    /// <summary>A journal as a recorder leaves it, with every kind of line.</summary>
    private static (byte[] Journal, Trial[] Trials) RealJournal()
    {
        using var scratch = new ScratchStudy("quill-usb");
        var generator = new SeededGenerator(5);
        using (var held = scratch.Study.AcquireLock("test"))
        using (var recorder = scratch.Study.Begin(held, ScratchStudy.Record()))
        {
            recorder.AddRefused(new RefusedItem("byte 1034", "checksum wrong"));
            recorder.AddEvent("the rig restarted \"again\" – µ");
            recorder.SetClockFit(0, new ClockFitRecord(-41.25, 0.5, 12, 30));
            recorder.BeginSegment(new Segment(8, 3, 16_000_000, null));
            recorder.SetCountsReconciled(true);
            for (var sequence = 1; sequence <= 10; sequence++)
            {
                recorder.Append(ScratchStudy.Response(sequence, 100_000 + (long)(generator.NextDouble() * 1000), sequence / 6));
            }
        }

        return (File.ReadAllBytes(scratch.PathOf(Place)), [.. scratch.Study.Read(_key).Trials]);
    }

    private static int[] LineEnds(byte[] journal) => [.. journal.Select((value, index) => (value, index)).Where(pair => pair.value == '\n').Select(pair => pair.index + 1)];
}
