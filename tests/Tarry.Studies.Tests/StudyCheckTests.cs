using System.Security.Cryptography;
using System.Text;
using System.Text.Json.Nodes;
using Tarry.Studies.Sealing;
using Tarry.Studies.Sessions;
using Tarry.Studies.StudyFiles;

namespace Tarry.Studies.Tests;

public sealed class StudyCheckTests
{
    private const string Parquet = "sessions/monday.quill-usb/trials.parquet";
    private const string Session = "sessions/monday.quill-usb/session.json";
    private static readonly SessionKey _key = new("monday", "quill-usb");

    [Fact]
    public void Run_SoundStudy_PassesWithItsCounts()
    {
        using var scratch = Sealed();
        var result = StudyCheck.Run(scratch.Study);
        Assert.Empty(result.Problems);
        Assert.Equal(new SessionCheck(_key, true, new SessionCounts(10, 1, 0, 0, 0), 0, []), Assert.Single(result.Sessions) with { Problems = [] });
    }

    [Fact]
    public void Manifest_SealedFiles_HasTheirSha256()
    {
        using var scratch = Sealed();
        var files = JsonNode.Parse(File.ReadAllText(scratch.PathOf("manifest.json")))!["files"]!.AsObject();
        Assert.Equal([Session, Parquet], files.Select(file => file.Key));
        Assert.All(files, file => Assert.Equal(Convert.ToHexStringLower(SHA256.HashData(File.ReadAllBytes(scratch.PathOf(file.Key)))), file.Value!.GetValue<string>()));
    }

    // FIPS 180-4 example, also in the NIST example values: SHA-256 of "abc".
    [Fact]
    public void Sha256_OfAbc_IsThePublishedDigest() =>
        Assert.Equal("ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad", Manifest.Sha256("abc"u8));

    [Theory]
    [InlineData(Parquet)]
    [InlineData(Session)]
    public void Run_EveryByteOfASealedFileFlipped_IsTold(string file)
    {
        using var scratch = Sealed();
        var sound = File.ReadAllBytes(scratch.PathOf(file));
        for (var index = 0; index < sound.Length; index++)
        {
            var damaged = sound.ToArray();
            damaged[index] ^= (byte)(1 << (index % 8));
            File.WriteAllBytes(scratch.PathOf(file), damaged);
            if (index % 8 == 0)
            {
                // The slower of the two, so not for every byte.
                var problem = Assert.Single(StudyCheck.Run(scratch.Study).Problems);
                Assert.Equal((StudyProblemKind.FileChanged, file), (problem.Kind, problem.Place));
            }

            Assert.Equal(file, Assert.Throws<StudyDamagedException>(() => scratch.Study.Read(_key)).Place);
        }
    }

    [Fact]
    public void Run_FileMissing_IsToldAndTheSessionIsNotLeftOut()
    {
        using var scratch = Sealed();
        File.Delete(scratch.PathOf(Parquet));
        Assert.Equal(StudyProblemKind.FileMissing, Assert.Single(StudyCheck.Run(scratch.Study).Problems).Kind);
        Directory.Delete(scratch.PathOf("sessions"), recursive: true);
        Assert.Equal([_key], scratch.Study.SessionKeys);
        Assert.All(StudyCheck.Run(scratch.Study).Problems, problem => Assert.Equal(StudyProblemKind.FileMissing, problem.Kind));
        Assert.Throws<StudyDamagedException>(() => scratch.Study.Read(_key));
    }

    [Fact]
    public void Run_FilesThatAreNotListed_AreTold()
    {
        using var scratch = Sealed();
        File.WriteAllText(scratch.PathOf("sessions/monday.quill-usb/notes.txt"), "x");
        Directory.CreateDirectory(scratch.PathOf("sessions/tuesday.quill-usb"));
        File.Copy(scratch.PathOf(Parquet), scratch.PathOf("sessions/tuesday.quill-usb/trials.parquet"));
        File.WriteAllText(
            scratch.PathOf("sessions/tuesday.quill-usb/session.json"),
            File.ReadAllText(scratch.PathOf(Session)).Replace("monday", "tuesday", StringComparison.Ordinal));
        Assert.Equal(
            [
                (StudyProblemKind.FileNotListed, "sessions/monday.quill-usb/notes.txt"),
                (StudyProblemKind.FileNotListed, "sessions/tuesday.quill-usb/session.json"),
                (StudyProblemKind.FileNotListed, "sessions/tuesday.quill-usb/trials.parquet"),
            ],
            StudyCheck.Run(scratch.Study).Problems.Select(problem => (problem.Kind, problem.Place)));
        Assert.Equal(2, scratch.Study.SessionKeys.Count);
    }

    [Fact]
    public void Run_NoManifest_IsTold()
    {
        using var scratch = Sealed();
        File.Delete(scratch.PathOf("manifest.json"));
        var problems = StudyCheck.Run(scratch.Study).Problems;
        Assert.Equal(2, problems.Count);
        Assert.All(problems, problem => Assert.Contains("which is missing", problem.Message, StringComparison.Ordinal));
        Assert.Equal(11, scratch.Study.Read(_key).Trials.Count);
    }

    [Fact]
    public void Run_ManifestThatIsNoJson_IsDamaged()
    {
        using var scratch = Sealed();
        File.WriteAllText(scratch.PathOf("manifest.json"), "{");
        Assert.Equal("manifest.json", Assert.Throws<StudyDamagedException>(() => StudyCheck.Run(scratch.Study)).Place);
    }

    [Fact]
    public void Run_CountsAndTrialsThatDoNotHold_AreTold()
    {
        using var scratch = Sealed();
        Forge(scratch, Session, text => Encoding.UTF8.GetBytes(Encoding.UTF8.GetString(text).Replace("\"response\": 10", "\"response\": 9", StringComparison.Ordinal)));
        Forge(scratch, Parquet, _ => TrialTable.Write(
        [
            ScratchStudy.Response(1) with { PressTicks = 900 },
            ScratchStudy.Response(2) with { PressTicks = 800 },
            ScratchStudy.Response(2) with { PressTicks = 900 },
            ScratchStudy.Response(3, segment: 4),
            ScratchStudy.Response(4) with { LatencyTicks = -3 },
        ]));
        Assert.Equal(
            [
                (StudyProblemKind.CountsDisagree, Session),
                (StudyProblemKind.TrialBroken, $"{Parquet} seq 2"),
                (StudyProblemKind.PressTimesNotAscending, $"{Parquet} seq 2"),
            ],
            StudyCheck.Run(scratch.Study).Problems.Select(problem => (problem.Kind, problem.Place)));
        Assert.Contains("2 more", StudyCheck.Run(scratch.Study).Problems[1].Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Run_ExclusionsOfNothingAndUndeclaredConditions_AreTold()
    {
        using var scratch = Sealed();
        using (var held = scratch.Study.AcquireLock("test"))
        {
            scratch.Study.AddExclusion(held, new Exclusion(_key, "warm-up", 1, 3));
            scratch.Study.AddExclusion(held, new Exclusion(_key, "beyond the end", 100, null));
            scratch.Study.AddExclusion(held, new Exclusion(new SessionKey("friday", "quill-usb"), "no such", null, null));
        }

        var result = StudyCheck.Run(scratch.Study);
        Assert.Equal(2, result.Problems.Count(problem => problem.Kind == StudyProblemKind.ExclusionWithoutTrials));
        Assert.Equal(2, result.Problems.Count);
        Assert.Equal(new SessionCounts(7, 1, 0, 0, 3), result.Sessions[0].Counts);

        File.WriteAllText(scratch.PathOf("study.toml"), "title = \"t\"\n");
        Assert.Equal(StudyProblemKind.ConditionNotDeclared, Assert.Single(StudyCheck.Run(Study.Open(scratch.Folder)).Problems).Kind);
    }

    [Fact]
    public void Run_OpenJournal_IsToldAndNoProblemUntilItIsDamaged()
    {
        using var scratch = new ScratchStudy("quill-usb");
        using (var held = scratch.Study.AcquireLock("test"))
        using (var recorder = scratch.Study.Begin(held, ScratchStudy.Record()))
        {
            recorder.Append(ScratchStudy.Response(1));
            recorder.Append(ScratchStudy.Missed(2));
        }

        var journal = scratch.PathOf("sessions/monday.quill-usb/journal.log");
        File.AppendAllText(journal, "torn");
        var result = StudyCheck.Run(scratch.Study);
        Assert.True(result.Passed);
        Assert.Equal((false, 4L, new SessionCounts(1, 1, 0, 0, 0)), (result.Sessions[0].Sealed, result.Sessions[0].TornBytes, result.Sessions[0].Counts!.Value));

        var bytes = File.ReadAllBytes(journal);
        bytes[3] ^= 1;
        File.WriteAllBytes(journal, bytes);
        var problem = Assert.Single(StudyCheck.Run(scratch.Study).Problems);
        Assert.Equal((StudyProblemKind.JournalDamaged, "sessions/monday.quill-usb/journal.log line 1 (byte 0)"), (problem.Kind, problem.Place));
    }

    private static ScratchStudy Sealed()
    {
        var scratch = new ScratchStudy("quill-usb");
        scratch.Seal();
        return scratch;
    }

    /// <summary>Changes a sealed file and its entry in the manifest, as no honest program does.</summary>
    private static void Forge(ScratchStudy scratch, string file, Func<byte[], byte[]> change)
    {
        var changed = change(File.ReadAllBytes(scratch.PathOf(file)));
        File.WriteAllBytes(scratch.PathOf(file), changed);
        var manifest = JsonNode.Parse(File.ReadAllText(scratch.PathOf("manifest.json")))!;
        manifest["files"]![file] = Convert.ToHexStringLower(SHA256.HashData(changed));
        File.WriteAllText(scratch.PathOf("manifest.json"), manifest.ToJsonString());
    }
}
