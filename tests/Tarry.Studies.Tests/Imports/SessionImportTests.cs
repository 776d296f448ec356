using Tarry.Studies.Sessions;
using Tarry.Studies.StudyFiles;
using Tarry.Studies.Trials;

namespace Tarry.Studies.Tests.Imports;

public sealed class SessionImportTests
{
    private static readonly SessionKey _first = new("monday", "quill-usb");
    private static readonly SessionKey _second = new("monday", "quill-radio");

    private static readonly (SessionRecord, IReadOnlyList<Trial>)[] _sessions =
    [
        (ScratchStudy.Record(), [ScratchStudy.Response(2), ScratchStudy.Response(1)]),
        (ScratchStudy.Record(condition: "quill-radio"), [ScratchStudy.Missed(1)]),
    ];

    private static readonly ConditionEntry[] _conditions = [ScratchStudy.Condition("quill-usb", ("link", "usb")), ScratchStudy.Condition("quill-radio")];

    [Fact]
    public void SealImported_NewSessions_AreSealedListedAndDeclared()
    {
        using var scratch = new ScratchStudy();
        Import(scratch);
        var study = Study.Open(scratch.Folder);
        Assert.Equal([_second, _first], study.SessionKeys);
        Assert.Equal([1, 2], study.Read(_first).Trials.Select(trial => trial.Sequence));
        Assert.Equal("usb", study.File.Conditions[0].Factors["link"]);
        var record = Assert.Single(study.Imports);
        Assert.Equal(["monday.quill-radio", "monday.quill-usb"], record.Sessions);
        Assert.Equal(2, record.RefusedByReason["latency is not a number"]);
        Assert.Equal(1, record.RefusedUnassigned);
        Assert.Equal(ScratchStudy.Import().Refused, record.Refused);
        Assert.True(File.Exists(scratch.PathOf("imports/0011223344556677.json")));
        Assert.False(File.Exists(scratch.PathOf("imports/unfinished.json")));
        Assert.True(StudyCheck.Run(study).Passed);
    }

    [Fact]
    public void SealImported_SessionThatIsThere_IsRefusedWithItsNameAndRemedy()
    {
        using var scratch = new ScratchStudy();
        Import(scratch);
        var before = Snapshot(scratch);
        var error = Assert.Throws<StudyException>(() => Import(scratch));
        Assert.Contains("monday.quill-radio, monday.quill-usb", error.Message, StringComparison.Ordinal);
        Assert.Contains("--sitting", error.Remedy, StringComparison.Ordinal);
        Assert.Equal(before, Snapshot(scratch));
    }

    [Fact]
    public void SealImported_SameFileUnderAnotherSitting_HasARecordOfItsOwn()
    {
        using var scratch = new ScratchStudy();
        Import(scratch);
        using var held = scratch.Study.AcquireLock("test");
        scratch.Study.SealImported(held, [(ScratchStudy.Record("tuesday"), [])], ScratchStudy.Import(), []);
        Assert.True(File.Exists(scratch.PathOf("imports/0011223344556677-2.json")));
        Assert.Equal(2, scratch.Study.Imports.Count);
    }

    [Fact]
    public void SealImported_BrokenTrialOrUndeclaredCondition_MakesNothing()
    {
        using var scratch = new ScratchStudy();
        using var held = scratch.Study.AcquireLock("test");
        var before = Snapshot(scratch);
        Assert.Throws<ArgumentException>(() => scratch.Study.SealImported(held, [(ScratchStudy.Record(), [ScratchStudy.Response(1), ScratchStudy.Response(1)])], ScratchStudy.Import(), _conditions));
        Assert.Throws<ArgumentException>(() => scratch.Study.SealImported(held, [(ScratchStudy.Record(), [ScratchStudy.Response(1) with { LatencyTicks = -1 }])], ScratchStudy.Import(), _conditions));
        Assert.Throws<StudyException>(() => scratch.Study.SealImported(held, _sessions, ScratchStudy.Import(), []));
        Assert.Equal(before, Snapshot(scratch));
    }

    [Theory]
    [InlineData("sessions/monday.quill-usb/trials.parquet.tmp")]
    [InlineData("sessions/monday.quill-radio/session.json.tmp")]
    [InlineData("imports/0011223344556677.json.tmp")]
    [InlineData("study.toml.tmp")]
    [InlineData("manifest.json.tmp")]
    public void SealImported_DiskFailsAtAnyStep_LeavesNothing(string failing)
    {
        using var scratch = new ScratchStudy();
        // A folder where a file is to be written fails that step.
        var obstacle = Directory.CreateDirectory(scratch.PathOf(failing)).FullName;
        var session = Path.GetDirectoryName(obstacle)!;
        var inSession = failing.StartsWith("sessions", StringComparison.Ordinal);
        var before = Snapshot(scratch);
        using (var held = scratch.Study.AcquireLock("test"))
        {
            if (inSession)
            {
                // The session folder must not be there for the import to begin, so its parent is made unfit instead.
                Directory.Delete(session, recursive: true);
                Directory.Delete(scratch.PathOf("sessions"), recursive: true);
                File.WriteAllText(scratch.PathOf("sessions"), "");
                before = Snapshot(scratch);
            }

            var error = Assert.Throws<StudyDiskException>(() => scratch.Study.SealImported(held, _sessions, ScratchStudy.Import(), _conditions));
            Assert.NotEmpty(error.Remedy);
        }

        Assert.Empty(scratch.Study.SessionKeys);
        Assert.Empty(scratch.Study.Imports);
        Assert.Empty(Study.Open(scratch.Folder).File.Conditions);
        Assert.Equal(before, Snapshot(scratch));
    }

    [Fact]
    public void AcquireLock_AfterAnImportThatWasKilled_RemovesWhatItMade()
    {
        using var scratch = new ScratchStudy();
        Import(scratch);
        var manifest = scratch.PathOf("manifest.json");
        // As at the moment before the manifest was written.
        File.Delete(manifest);
        File.WriteAllText(
            scratch.PathOf("imports/unfinished.json"),
            """{"format_version":1,"sessions":["monday.quill-radio","monday.quill-usb"],"record_path":"imports/0011223344556677.json"}""");
        Assert.Empty(scratch.Study.SessionKeys);
        Assert.Empty(scratch.Study.Imports);
        Assert.Throws<StudyException>(() => scratch.Study.Read(_first));
        Assert.True(StudyCheck.Run(scratch.Study).Passed);
        using (scratch.Study.AcquireLock("test"))
        {
            Assert.Empty(Directory.EnumerateFileSystemEntries(scratch.PathOf("sessions")));
            Assert.Empty(Directory.EnumerateFileSystemEntries(scratch.PathOf("imports")));
        }

        Import(scratch);
        Assert.Equal(2, scratch.Study.SessionKeys.Count);
    }

    [Fact]
    public void AcquireLock_AfterAnImportKilledBehindTheManifest_KeepsIt()
    {
        using var scratch = new ScratchStudy();
        Import(scratch);
        File.WriteAllText(
            scratch.PathOf("imports/unfinished.json"),
            """{"format_version":1,"sessions":["monday.quill-radio","monday.quill-usb"],"record_path":"imports/0011223344556677.json"}""");
        Assert.Equal(2, scratch.Study.SessionKeys.Count);
        scratch.Study.AcquireLock("test").Dispose();
        Assert.Equal(2, scratch.Study.SessionKeys.Count);
        Assert.Single(scratch.Study.Imports);
        Assert.False(File.Exists(scratch.PathOf("imports/unfinished.json")));
    }

    private static void Import(ScratchStudy scratch)
    {
        using var held = scratch.Study.AcquireLock("test");
        scratch.Study.SealImported(held, _sessions, ScratchStudy.Import(), _conditions);
    }

    private static List<string> Snapshot(ScratchStudy scratch) =>
    [
        .. Directory.EnumerateFiles(scratch.Folder, "*", SearchOption.AllDirectories)
            .Where(path => !Path.GetFileName(path).StartsWith(".lock", StringComparison.Ordinal))
            .Order(StringComparer.Ordinal)
            .Select(path => $"{Path.GetRelativePath(scratch.Folder, path)} {Convert.ToHexString(File.ReadAllBytes(path))}"),
    ];
}
