using System.Text;
using Tarry.Metrology;
using Tarry.Rig.HostEvents;
using Tarry.Rig.HostEvents.Recording;
using Tarry.Studies.Sessions;

namespace Tarry.Rig.Tests.HostEvents;

public sealed class RecordingTests : IDisposable
{
    private static readonly SessionKey Key = new("reports", "pad");
    private static readonly RecordedCode South = new(InputCode.Key, 0x130);
    private static readonly RecordedCode Step = new(InputCode.Relative, 0);
    private static readonly RecordingHeader Header = new() { Device = "Pad", Transport = "host-events", Clock = "a clock", Codes = [South.ToString(), Step.ToString()] };
    private readonly DirectoryInfo folder = Directory.CreateTempSubdirectory("tarry-recording-");

    private string File => Path.Combine(folder.FullName, "reports.pad.txt");

    public void Dispose() => folder.Delete(recursive: true);

    [Fact]
    public void Read_OfWhatWasRecorded_GivesItBack()
    {
        var state = new ReportState([South, Step], []);
        using (var recording = new RecordingFile(File, Header))
        {
            Take(recording, 1_000, new InputEvent(1, 0x130, 1), new InputEvent(2, 0, -3));
            Take(recording, 5_000, new InputEvent(2, 0, 4));
            Take(recording, 9_000, new InputEvent(1, 0x131, 1));
            Take(recording, 9_500, new InputEvent(1, 0x130, 0));
            recording.AddEvent("something\nhappened");
        }

        var (session, import) = RecordedSession.Read(File, Key, _ => throw new InvalidOperationException("there is no descriptor"));
        var fields = session.Stream.Fields;
        Assert.Equal(["btn_south", "rel_x"], fields.Select(field => field.Column));

        // The step is its own report's; the button stands. A report without a chosen code is not there.
        (long, long?, long?)[] expected = [(0, 1, -3), (4_000, 1, 4), (8_500, 0, 0)];
        Assert.Equal(expected, Enumerable.Range(0, session.Reports.Count).Select(index =>
            (session.Reports.Tick(index), fields[0].ValueIn(session.Reports.Data(index)), fields[1].ValueIn(session.Reports.Data(index)))));
        Assert.Contains("something happened", session.Record.Events);
        Assert.Equal((4, 4, 0), (import.RowsRead, import.RowsKept, import.RefusedTotal));

        void Take(RecordingFile recording, long stamp, params InputEvent[] events)
        {
            var bytes = state.Take(new InputReport { StampNanoseconds = stamp, Events = events });
            if (!bytes.IsEmpty)
            {
                recording.Add(stamp, bytes);
            }
        }
    }

    [Fact]
    public void State_OfAnAxisThatDoesNotMove_IsWhereItStood()
    {
        RecordedCode[] axes = [new(InputCode.Absolute, 0), new(InputCode.Absolute, 1)];
        var state = new ReportState(axes, [new InputAxis(0, 0, 255, 127, 0, 0), new InputAxis(1, 0, 255, 130, 0, 0)]);
        var bytes = state.Take(new InputReport { StampNanoseconds = 1, Events = [new InputEvent(3, 0, 200)] });
        Assert.Equal([200, 0, 0, 0, 130, 0, 0, 0], bytes.ToArray());
    }

    [Fact]
    public void Read_OfADamagedFirstLine_KeepsTheReportsAndSaysWhatIsNotKnown()
    {
        var bytes = Header with { Codes = [], Transport = "host-reports", ReportDescriptor = "0501\u00ff9" };
        System.IO.File.WriteAllText(File, bytes.ToLine() + "\n1000 01ff\n");
        var (session, _) = RecordedSession.Read(File, Key, _ => throw new InvalidOperationException("the descriptor is damaged"));
        Assert.Equal(1, session.Reports.Count);
        Assert.Contains(session.Record.Events, what => what.Contains("descriptor", StringComparison.Ordinal));

        // The second code keeps its place in the bytes where the first is damaged.
        System.IO.File.WriteAllText(File, (Header with { Codes = ["1:x", Step.ToString()] }).ToLine() + "\n1000 01000000fdffffff\n");
        var (changes, _) = RecordedSession.Read(File, Key, _ => ([], false));
        Assert.Equal(-3, Assert.Single(changes.Stream.Fields).ValueIn(changes.Reports.Data(0)));
        Assert.Contains(changes.Record.Events, what => what.Contains("code", StringComparison.Ordinal));
    }

    [Fact]
    public void Recording_OverOneThatIsThere_IsRefused()
    {
        new RecordingFile(File, Header).Dispose();
        Assert.Throws<IOException>(() => new RecordingFile(File, Header));
    }

    [Fact]
    public void Read_OfARecordingCutAnywhere_GivesItsWholeLinesOrSaysThatThereAreNone()
    {
        var whole = Header.ToLine() + "\n" + string.Concat(Enumerable.Range(0, 5).Select(index => $"{1000 * index} 0100000000000000\n"));
        for (var length = 0; length <= whole.Length; length++)
        {
            System.IO.File.WriteAllText(File, whole[..length]);
            var lines = whole[..length].Count(letter => letter == '\n') - 1;
            if (lines < 1)
            {
                Assert.Throws<HostInputException>(() => RecordedSession.Read(File, Key, _ => ([], false)));
            }
            else
            {
                var (session, _) = RecordedSession.Read(File, Key, _ => ([], false));
                Assert.Equal(lines, session.Reports.Count);
                Assert.Equal(whole[length - 1] == '\n' ? 0 : 1, session.Record.RefusedTotal);
            }
        }
    }

    [Fact]
    public void Read_OfAnything_ThrowsNothingElse()
    {
        var random = new SeededGenerator(9);
        for (var round = 0; round < 500; round++)
        {
            var lines = Enumerable.Range(0, 6).Select(_ => new string([.. Enumerable.Range(0, random.NextInt32(12)).Select(_ => "0123456789abcdef -\0e"[random.NextInt32(20)])]));
            System.IO.File.WriteAllBytes(File, Encoding.UTF8.GetBytes(Header.ToLine() + "\n1 00\n" + string.Join('\n', lines)));
            var (session, import) = RecordedSession.Read(File, Key, _ => ([], false));
            Assert.Equal(import.RowsRead + (import.Refused.Any(item => item.Reason.StartsWith("cut off", StringComparison.Ordinal)) ? 1 : 0), import.RowsKept + import.RefusedTotal);
            Assert.True(session.Reports.Count >= 1);
        }
    }
}
