using System.Diagnostics;
using Tarry.Studies.Sessions;
using Tarry.Studies.StudyFiles;
using Tarry.Studies.Trials;

namespace Tarry.Studies.Tests;

public sealed class StudyTests
{
    [Fact]
    public void Create_NewFolder_OpensWithWhatWasGiven()
    {
        using var scratch = new ScratchStudy();
        var file = Study.Open(scratch.Folder).File;
        Assert.Equal(("Three pads and a dongle", "bench-board", 0.5), (file.Title, file.Reference, file.MarginMs));
        Assert.Empty(scratch.Study.SessionKeys);
        Assert.Empty(scratch.Study.Imports);
    }

    [Theory]
    [InlineData("", null, 0.5)]
    [InlineData("t", "Bench Board", 0.5)]
    [InlineData("t", null, 0)]
    [InlineData("t", null, double.NaN)]
    public void Create_ValueNotAllowed_MakesNothing(string title, string? reference, double margin)
    {
        using var scratch = new ScratchStudy();
        var folder = Path.Combine(scratch.Parent, "deep", "new");
        Assert.Throws<StudyException>(() => Study.Create(folder, title, reference, margin));
        Assert.False(Directory.Exists(Path.Combine(scratch.Parent, "deep")));
    }

    [Fact]
    public void Create_WhereSomethingIs_IsRefusedAndChangesNothing()
    {
        using var scratch = new ScratchStudy();
        Assert.Contains("study", Assert.Throws<StudyException>(() => Study.Create(scratch.Folder, "t", null, 1)).Message, StringComparison.Ordinal);
        Assert.Contains("not empty", Assert.Throws<StudyException>(() => Study.Create(scratch.Parent, "t", null, 1)).Message, StringComparison.Ordinal);
        Assert.Contains("is a file", Assert.Throws<StudyException>(() => Study.Create(scratch.PathOf("study.toml"), "t", null, 1)).Message, StringComparison.Ordinal);
        Assert.Equal("Three pads and a dongle", Study.Open(scratch.Folder).File.Title);
    }

    [Fact]
    public void Create_DiskRefuses_RemovesTheFoldersThatItMade()
    {
        using var scratch = new ScratchStudy();
        var file = Path.Combine(scratch.Parent, "a-file");
        File.WriteAllText(file, "");
        Assert.Throws<StudyDiskException>(() => Study.Create(Path.Combine(file, "deep", "new"), "t", null, 1));
        Assert.True(File.Exists(file));
    }

    [Fact]
    public void Open_NoFolderOrNoStudy_SaysSoWithARemedy()
    {
        using var scratch = new ScratchStudy();
        Assert.Contains("no folder", Assert.Throws<StudyException>(() => Study.Open(scratch.PathOf("not-there"))).Message, StringComparison.Ordinal);
        var error = Assert.Throws<StudyException>(() => Study.Open(scratch.Parent));
        Assert.Contains("study.toml", error.Message, StringComparison.Ordinal);
        Assert.Contains("tarry new", error.Remedy, StringComparison.Ordinal);
        Assert.Contains("is a file", Assert.Throws<StudyException>(() => Study.Open(scratch.PathOf("study.toml"))).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Open_StudyFileThatIsNotUtf8_NamesTheByte()
    {
        using var scratch = new ScratchStudy();
        File.WriteAllBytes(scratch.PathOf("study.toml"), [.. "title = \""u8, 0xff, .. "\"\n"u8]);
        Assert.Equal("study.toml byte 9", Assert.Throws<StudyException>(() => Study.Open(scratch.Folder)).Place);
    }

    [Fact]
    public void AddCondition_FileEditedSinceItWasOpened_KeepsThatEdit()
    {
        using var scratch = new ScratchStudy();
        File.AppendAllText(scratch.PathOf("study.toml"), "# by hand\n");
        using var held = scratch.Study.AcquireLock("test");
        scratch.Study.AddCondition(held, ScratchStudy.Condition("a"));
        Assert.Contains("# by hand\n", File.ReadAllText(scratch.PathOf("study.toml")), StringComparison.Ordinal);
        Assert.Equal("a", Assert.Single(scratch.Study.File.Conditions).Id);
    }

    [Fact]
    public void AddCondition_FileWithAByteOrderMark_KeepsIt()
    {
        using var scratch = new ScratchStudy();
        File.WriteAllBytes(scratch.PathOf("study.toml"), [0xef, 0xbb, 0xbf, .. "title = \"t\"\r\n"u8]);
        using var held = scratch.Study.AcquireLock("test");
        scratch.Study.AddCondition(held, ScratchStudy.Condition("a"));
        Assert.Equal([0xef, 0xbb, 0xbf, .. "title = \"t\"\r\n\r\n[[condition]]\r\nid = \"a\"\r\n"u8], File.ReadAllBytes(scratch.PathOf("study.toml")));
    }

    [Fact]
    public void AddExclusion_UndeclaredCondition_IsRefusedAndChangesNothing()
    {
        using var scratch = new ScratchStudy();
        var before = File.ReadAllText(scratch.PathOf("study.toml"));
        using var held = scratch.Study.AcquireLock("test");
        Assert.Throws<StudyException>(() => scratch.Study.AddExclusion(held, new Exclusion(new SessionKey("m", "x"), "why", null, null)));
        Assert.Throws<ArgumentException>(() => scratch.Study.SetReference(held, "Not A Name"));
        Assert.Equal(before, File.ReadAllText(scratch.PathOf("study.toml")));
    }

    [Fact]
    public void Read_NewerSessionOrAnotherKind_SaysSo()
    {
        using var scratch = new ScratchStudy("quill-usb");
        scratch.Seal();
        File.Delete(scratch.PathOf("manifest.json"));
        var path = scratch.PathOf("sessions/monday.quill-usb/session.json");
        var text = File.ReadAllText(path);
        File.WriteAllText(path, text.Replace("\"format_version\": 1", "\"format_version\": 2", StringComparison.Ordinal));
        Assert.Contains("version 2", Assert.Throws<StudyException>(() => scratch.Study.Read(new("monday", "quill-usb"))).Message, StringComparison.Ordinal);
        File.WriteAllText(path, text.Replace("\"latency\"", "\"stick\"", StringComparison.Ordinal));
        Assert.Contains("'stick'", Assert.Throws<StudyException>(() => scratch.Study.Read(new("monday", "quill-usb"))).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Read_SessionFileWithAnyBitFlipped_IsReadOrRefusedAndNeverCrashes()
    {
        using var scratch = new ScratchStudy("quill-usb");
        scratch.Seal();
        File.Delete(scratch.PathOf("manifest.json"));
        var path = scratch.PathOf("sessions/monday.quill-usb/session.json");
        var sound = File.ReadAllBytes(path);
        var refused = 0;
        for (var index = 0; index < sound.Length * 8; index += 3)
        {
            var damaged = sound.ToArray();
            damaged[index / 8] ^= (byte)(1 << (index % 8));
            File.WriteAllBytes(path, damaged);
            try
            {
                scratch.Study.Read(new("monday", "quill-usb"));
            }
            catch (StudyException error)
            {
                Assert.Equal("sessions/monday.quill-usb/session.json", error.Place);
                refused++;
            }
        }

        Assert.True(refused > sound.Length / 4, $"only {refused} of {sound.Length * 8 / 3} flips were refused");
    }

    [Theory]
    [InlineData("\"segments\": []")]
    [InlineData("\"segments\": [null]")]
    [InlineData("\"segments\": null")]
    [InlineData("\"segments\": [{\"boot_id\": 1, \"first_sequence\": 1, \"tick_hz\": 0, \"clock_fit\": null}]")]
    public void Read_SegmentsThatCannotBe_AreDamage(string segments)
    {
        using var scratch = new ScratchStudy("quill-usb");
        scratch.Seal();
        File.Delete(scratch.PathOf("manifest.json"));
        var path = scratch.PathOf("sessions/monday.quill-usb/session.json");
        File.WriteAllText(path, $$"""{"format_version": 1, "kind": "latency", "sitting": "monday", "condition": "quill-usb", {{segments}}}""");
        Assert.Throws<StudyDamagedException>(() => scratch.Study.Read(new("monday", "quill-usb")));
    }

    [Theory]
    [InlineData("../outside.txt")]
    [InlineData("sessions/../../outside.txt")]
    [InlineData("/etc/hostname")]
    [InlineData("C:/outside.txt")]
    public void Open_StudyThatNamesFilesOutside_TouchesNone(string file)
    {
        using var scratch = new ScratchStudy();
        var outside = Path.Combine(scratch.Parent, "outside.txt");
        File.WriteAllText(outside, "mine");
        File.WriteAllText(scratch.PathOf("manifest.json"), $$$"""{"format_version":1,"files":{"{{{file}}}":"00"}}""");
        Assert.Throws<StudyDamagedException>(() => StudyCheck.Run(scratch.Study));
        File.Delete(scratch.PathOf("manifest.json"));
        Directory.CreateDirectory(scratch.PathOf("imports"));
        File.WriteAllText(scratch.PathOf("imports/unfinished.json"), $$"""{"format_version":1,"sessions":[],"record_path":"{{file}}"}""");
        Assert.Throws<StudyDamagedException>(() => scratch.Study.AcquireLock("test"));
        Assert.Equal("mine", File.ReadAllText(outside));
    }

    [Fact]
    public void Read_AMillionTrialsIn96Sessions_TakesNotLong()
    {
        using var scratch = new ScratchStudy();
        var trials = Enumerable.Range(1, 10_417).Select(sequence => ScratchStudy.Response(sequence, 100_000 + (sequence * 7919L % 16_000))).ToArray();
        var sessions = Enumerable.Range(0, 96).Select(index => (ScratchStudy.Record($"day-{index}"), (IReadOnlyList<Trial>)trials)).ToList();
        using (var held = scratch.Study.AcquireLock("test"))
        {
            scratch.Study.SealImported(held, sessions, ScratchStudy.Import(), [ScratchStudy.Condition("quill-usb")]);
        }

        var watch = Stopwatch.StartNew();
        var study = Study.Open(scratch.Folder);
        var read = study.SessionKeys.Sum(key => (long)study.Read(key).Trials.Count);
        watch.Stop();
        TestContext.Current.SendDiagnosticMessage($"read {read} trials in {watch.ElapsedMilliseconds} ms");
        Assert.Equal(96 * 10_417, read);
        // Common practice, no published source: far above what it takes, to tell a blunder and not a busy machine.
        Assert.True(watch.Elapsed < TimeSpan.FromSeconds(10), $"{watch.Elapsed}");
    }
}
