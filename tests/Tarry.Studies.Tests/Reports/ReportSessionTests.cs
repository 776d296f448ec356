using ParquetSharp;
using Tarry.Studies.Reports;
using Tarry.Studies.Sessions;

namespace Tarry.Studies.Tests.Reports;

public class ReportSessionTests
{
    private static readonly ReportField Button = new()
    {
        Column = "button_1",
        Endpoint = 0x81,
        ReportId = 1,
        BitOffset = 8,
        BitSize = 1,
        LogicalMinimum = 0,
        LogicalMaximum = 1,
        Usages = [new UsageRange(9, 1, 1)],
    };

    [Fact]
    public void SealImported_Reports_ReadBackTheSameAndAreNoLatencies()
    {
        using var scratch = new ScratchStudy("quill-usb");
        Seal(scratch, 1_000);

        var study = Study.Open(scratch.Folder);

        Assert.Empty(study.SessionKeys);
        var read = study.ReadReports(Assert.Single(study.ReportSessionKeys));
        Assert.Equal((1_000, "usb1.5", 1L), (read.Reports.Count, read.Stream.Device, Assert.Single(read.Stream.Fields).ValueIn(read.Reports.Data(1))));
        Assert.Equal(3 * 999, read.Reports.Tick(999));
        Assert.Equal(2L, Assert.Single(Assert.Single(study.Imports).RefusedByReason).Value);
        var check = StudyCheck.Run(study);
        Assert.True(check.Passed, string.Join('\n', check.Problems));
        Assert.Equal(1_000, Assert.Single(check.Sessions).Reports);
    }

    [Fact]
    public void Table_ReadByTheLibraryAlone_HasTheColumnsOfTheFormat()
    {
        using var scratch = new ScratchStudy("quill-usb");
        Seal(scratch, 300_000);

        using var file = new ParquetFileReader(TablePath(scratch));
        using var rows = file.RowGroup(2);

        Assert.Equal(["tick", "endpoint", "report_id", "data", "button_1"], Enumerable.Range(0, 5).Select(index => file.FileMetaData.Schema.Column(index).Name));
        Assert.Equal(300_000, file.FileMetaData.NumRows);
        using var ticks = rows.Column(0).LogicalReader<long>();
        Assert.Equal(3 * 262_144, ticks.ReadAll(1)[0]);
        using var values = rows.Column(4).LogicalReader<long?>();
        Assert.Equal([0L, 1L], values.ReadAll(2));
    }

    [Fact]
    public void Check_ColumnThatSaysOtherThanTheBytes_IsFound()
    {
        using var scratch = new ScratchStudy("quill-usb");
        // A table whose column was computed for another bit: its bytes and ticks are sound.
        var session = Session(50);
        Seal(scratch, session with { Record = session.Record with { ReportStream = session.Stream with { Fields = [Button with { BitOffset = 9 }] } } });
        var file = Path.Combine(scratch.Folder, "sessions", "monday.quill-usb", "session.json");
        File.WriteAllText(file, File.ReadAllText(file).Replace("\"bit_offset\": 9", "\"bit_offset\": 8", StringComparison.Ordinal));
        File.WriteAllText(
            Path.Combine(scratch.Folder, "manifest.json"),
            File.ReadAllText(Path.Combine(scratch.Folder, "manifest.json")).Replace(HashInManifest(scratch, "session.json"), Hash(file), StringComparison.Ordinal));

        var problem = Assert.Single(StudyCheck.Run(Study.Open(scratch.Folder)).Problems);

        Assert.Equal(StudyProblemKind.ReportsDisagree, problem.Kind);
        Assert.Contains("column button_1 has 0 in row 2", problem.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Check_FlippedByteOrMissingTable_IsFound()
    {
        using var scratch = new ScratchStudy("quill-usb");
        Seal(scratch, 50);
        var bytes = File.ReadAllBytes(TablePath(scratch));
        bytes[bytes.Length / 2] ^= 1;
        File.WriteAllBytes(TablePath(scratch), bytes);

        Assert.Equal(StudyProblemKind.FileChanged, Assert.Single(StudyCheck.Run(Study.Open(scratch.Folder)).Problems).Kind);
        Assert.Throws<StudyDamagedException>(() => Study.Open(scratch.Folder).ReadReports(new SessionKey("monday", "quill-usb")));

        File.Delete(TablePath(scratch));
        Assert.Equal(StudyProblemKind.FileMissing, Assert.Single(StudyCheck.Run(Study.Open(scratch.Folder)).Problems).Kind);
        Assert.Single(Study.Open(scratch.Folder).ReportSessionKeys);
    }

    [Fact]
    public void SealImported_SessionThatIsThereOrTicksThatGoBack_AreRefused()
    {
        using var scratch = new ScratchStudy("quill-usb");
        Seal(scratch, 50);

        var error = Assert.Throws<StudyException>(() => Seal(scratch, 50));
        Assert.Contains("already", error.Message, StringComparison.Ordinal);
        var backwards = new ReportLog();
        backwards.Add(2, 0x81, [1, 0]);
        backwards.Add(1, 0x81, [1, 0]);
        Assert.Throws<ArgumentException>(() => Seal(scratch, new ReportSession(Session(1).Record with { Key = new SessionKey("tuesday", "quill-usb") }, backwards)));
    }

    [Fact]
    public void SealImported_Correction_IsReadInsteadAndIsOfTheSameKind()
    {
        using var scratch = new ScratchStudy("quill-usb");
        Seal(scratch, 50);
        using var held = scratch.Study.AcquireLock("test");
        scratch.Study.SealImported(held, [Session(40)], ScratchStudy.Import(), [], replacing: "ten reports were of another device");

        var study = Study.Open(scratch.Folder);
        var read = study.ReadReports(Assert.Single(study.ReportSessionKeys));
        Assert.Equal(40, read.Reports.Count);
        Assert.Equal(new Replacement("monday.quill-usb", "ten reports were of another device"), read.Record.Replaces);
        var check = StudyCheck.Run(study);
        Assert.True(check.Passed, string.Join('\n', check.Problems));
        // Latencies do not take the place of reports.
        Assert.Throws<StudyException>(() => study.SealImported(held, [(ScratchStudy.Record(), [ScratchStudy.Response(1)])], ScratchStudy.Import(), [], replacing: "because"));
    }

    private static void Seal(ScratchStudy scratch, int reports) => Seal(scratch, Session(reports));

    private static void Seal(ScratchStudy scratch, ReportSession session)
    {
        using var held = scratch.Study.AcquireLock("test");
        scratch.Study.SealImported(held, [session], ScratchStudy.Import(), []);
    }

    private static ReportSession Session(int reports)
    {
        var log = new ReportLog();
        for (var index = 0; index < reports; index++)
        {
            log.Add(3L * index, 0x81, [1, (byte)(index & 1)]);
        }

        return new ReportSession(
            new SessionRecord
            {
                Key = new SessionKey("monday", "quill-usb"),
                Segments = [new Segment(null, 1, 1_000_000, null)],
                ReportStream = new ReportStream
                {
                    Device = "usb1.5",
                    Endpoints = [new ReportEndpoint { Number = 0x81, Transport = "usb", ReportIdIsFirstByte = true }],
                    Fields = [Button],
                },
            },
            log);
    }

    private static string TablePath(ScratchStudy scratch) => Path.Combine(scratch.Folder, "sessions", "monday.quill-usb", "reports.parquet");

    private static string HashInManifest(ScratchStudy scratch, string name) =>
        File.ReadLines(Path.Combine(scratch.Folder, "manifest.json")).Single(line => line.Contains(name, StringComparison.Ordinal)).Split('"')[3];

    private static string Hash(string path) => Convert.ToHexStringLower(System.Security.Cryptography.SHA256.HashData(File.ReadAllBytes(path)));
}
