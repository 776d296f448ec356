using System.Text.Json;
using ParquetSharp;
using Tarry.Studies.Sessions;
using Tarry.Studies.Sticks;
using Tarry.Studies.StudyFiles;

namespace Tarry.Studies.Tests.Sticks;

public class StickSessionTests
{
    [Fact]
    public void SealImported_ProceduresOfOneSittingBesideItsLatencies_ReadBackTheSame()
    {
        using var scratch = new ScratchStudy("quill-usb");
        scratch.Seal();
        Seal(scratch, Session(StickProcedure.Rest), Session(StickProcedure.AngleStops), Session(StickProcedure.Substitution));

        var study = Study.Open(scratch.Folder);

        Assert.Equal(["monday.quill-usb"], study.SessionKeys.Select(key => key.ToString()));
        Assert.Empty(study.ReportSessionKeys);
        Assert.Equal(["monday.quill-usb.rest", "monday.quill-usb.angle-stops", "monday.quill-usb.substitution"], study.StickKeys.Select(key => key.ToString()));
        var stops = study.ReadStick(SessionKey.Parse("monday.quill-usb.angle-stops"));
        Assert.Equal(Session(StickProcedure.AngleStops).Setup, stops.Setup);
        Assert.Equal(3, stops.Samples.Count);
        Assert.Equal([0L, 4_000, 4_000], stops.Samples.Ticks.ToArray());
        Assert.Equal([127.5, 128, 255], stops.Samples.X.ToArray());
        Assert.Equal([45, double.NaN, 90], stops.Samples.Stimulus.ToArray());
        Assert.True(stops.Samples.StimulusY.IsEmpty);
        Assert.Equal([double.NaN, 0.5, 1], study.ReadStick(study.StickKeys[2]).Samples.StimulusY.ToArray());
        Assert.True(study.ReadStick(study.StickKeys[0]).Samples.Stimulus.IsEmpty);
        var check = StudyCheck.Run(study);
        Assert.True(check.Passed, string.Join('\n', check.Problems));
        Assert.Equal([null, 3L, 3L, 3L], check.Sessions.Select(session => session.Positions));
    }

    [Fact]
    public void Files_ReadByOthersAlone_AreThoseOfTheFormat()
    {
        using var scratch = new ScratchStudy("quill-usb");
        Seal(scratch, Session(StickProcedure.Substitution));

        using var file = new ParquetFileReader(scratch.PathOf("sessions/monday.quill-usb.substitution/reports.parquet"));
        using var document = JsonDocument.Parse(File.ReadAllBytes(scratch.PathOf("sessions/monday.quill-usb.substitution/session.json")));

        Assert.Equal(["tick", "x", "y", "stimulus_x", "stimulus_y"], Enumerable.Range(0, 5).Select(index => file.FileMetaData.Schema.Column(index).Name));
        using var rows = file.RowGroup(0);
        using var levels = rows.Column(3).LogicalReader<double?>();
        Assert.Equal([0, 0.25, null], levels.ReadAll(3));
        var root = document.RootElement;
        Assert.Equal(("stick", 3), (root.GetProperty("kind").GetString(), root.GetProperty("positions").GetInt32()));
        Assert.False(root.TryGetProperty("counts", out _));
        Assert.Equal(
            """{"procedure":"substitution","source":"rig","x":{"minimum":0,"maximum":255,"step":1},"y":{"minimum":0,"maximum":1023,"step":null},"stimulus":"level","stimulus_uncertainty":0.001}""",
            JsonSerializer.Serialize(root.GetProperty("stick")));
    }

    [Theory]
    [InlineData("reports.parquet")]
    [InlineData("session.json")]
    public void Check_FlippedByteOrMissingFile_IsToldWithItsPlace(string name)
    {
        using var scratch = new ScratchStudy("quill-usb");
        Seal(scratch, Session(StickProcedure.Rest));
        var path = scratch.PathOf($"sessions/monday.quill-usb.rest/{name}");
        var bytes = File.ReadAllBytes(path);
        bytes[bytes.Length / 2] ^= 1;
        File.WriteAllBytes(path, bytes);

        var problem = Assert.Single(StudyCheck.Run(Study.Open(scratch.Folder)).Problems);
        Assert.Equal((StudyProblemKind.FileChanged, $"sessions/monday.quill-usb.rest/{name}"), (problem.Kind, problem.Place));
        var key = Assert.Single(Study.Open(scratch.Folder).StickKeys);
        Assert.Equal(problem.Place, Assert.Throws<StudyDamagedException>(() => scratch.Study.ReadStick(key)).Place);

        File.Delete(path);
        Assert.Equal(StudyProblemKind.FileMissing, Assert.Single(StudyCheck.Run(Study.Open(scratch.Folder)).Problems).Kind);
        Assert.Equal(problem.Place, Assert.Throws<StudyDamagedException>(() => scratch.Study.ReadStick(key)).Place);
        Assert.Single(Study.Open(scratch.Folder).StickKeys);
    }

    [Theory]
    [InlineData("\"positions\": 3", "\"positions\": 4", "states 4 positions, and it has 3")]
    [InlineData("\"stimulus\": \"angle\"", "\"stimulus\": \"level\"", "Its columns are tick, x, y, stimulus_deg")]
    [InlineData("\"procedure\": \"angle-stops\"", "\"procedure\": \"rest\"", "it is of session monday.quill-usb.rest")]
    [InlineData("\"procedure\": \"angle-stops\"", "\"procedure\": \"shaken\"", "procedure")]
    [InlineData("\"maximum\": 255", "\"maximum\": -1", "the range of x from 0 to -1 is none")]
    public void Check_RecordThatDoesNotFitItsTable_IsFound(string was, string becomes, string told)
    {
        using var scratch = new ScratchStudy("quill-usb");
        Seal(scratch, Session(StickProcedure.AngleStops));
        var path = scratch.PathOf("sessions/monday.quill-usb.angle-stops/session.json");
        File.WriteAllText(path, File.ReadAllText(path).Replace(was, becomes, StringComparison.Ordinal));
        // Without a manifest nothing but the files themselves can tell.
        File.Delete(scratch.PathOf("manifest.json"));

        var problem = StudyCheck.Run(Study.Open(scratch.Folder)).Problems.Single(problem => problem.Kind == StudyProblemKind.FileUnreadable);

        Assert.Contains(told, problem.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void SealImported_ThatBreaksARule_IsRefusedAndNothingIsMade()
    {
        using var scratch = new ScratchStudy("quill-usb");
        var rest = Session(StickProcedure.Rest);
        var record = rest.Record;

        Refused(rest with { Samples = new StickSamples([], [], []) }, "no positions");
        Refused(rest with { Samples = Session(StickProcedure.AngleStops).Samples }, "columns of its stimulus");
        Refused(rest with { Record = record with { Stick = null } }, "what was done with the stick");
        Refused(rest with { Record = record with { Stick = rest.Setup with { Source = "memory" } } }, "'memory' is no source");
        Refused(rest with { Record = record with { Stick = rest.Setup with { StimulusUncertainty = 1 } } }, "a stimulus that it does not have");
        Refused(rest with { Record = record with { Segments = [record.Segments[0], record.Segments[0]] } }, "one unbroken stretch");
        Refused(rest with { Record = record with { Key = new SessionKey("monday", "quill-usb", StickProcedure.SlowRamp) } }, "do not agree");
        Assert.Empty(scratch.Study.StickKeys);
        Assert.False(Directory.Exists(scratch.PathOf("sessions")) && Directory.EnumerateDirectories(scratch.PathOf("sessions")).Any());

        Seal(scratch, rest);
        Assert.Contains("monday.quill-usb.rest", Assert.Throws<StudyException>(() => Seal(scratch, rest)).Message, StringComparison.Ordinal);

        void Refused(StickSession session, string reason) =>
            Assert.Contains(reason, Assert.Throws<ArgumentException>(() => Seal(scratch, session)).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void SealImported_Correction_IsReadInsteadAndSaysWhatItReplacesAndWhy()
    {
        using var scratch = new ScratchStudy("quill-usb");
        var rest = Session(StickProcedure.Rest);
        var wider = rest with { Record = rest.Record with { Stick = rest.Setup with { X = new StickRange(0, 1_023, 1) } } };
        Seal(scratch, rest);
        var first = File.ReadAllBytes(scratch.PathOf("sessions/monday.quill-usb.rest/session.json"));
        using (var held = scratch.Study.AcquireLock("test"))
        {
            scratch.Study.SealImported(held, [wider], ScratchStudy.Import(), [], replacing: "the range of x was stated too narrow");
            Assert.Throws<ArgumentException>(() => scratch.Study.SealImported(held, [wider], ScratchStudy.Import(), [], replacing: " "));
        }

        var study = Study.Open(scratch.Folder);
        var read = study.ReadStick(Assert.Single(study.StickKeys));
        Assert.Equal(1_023, read.Setup.X.Maximum);
        Assert.Equal(new Replacement("monday.quill-usb.rest", "the range of x was stated too narrow"), read.Record.Replaces);
        Assert.True(File.Exists(scratch.PathOf("sessions/monday.quill-usb.rest@2/reports.parquet")));
        Assert.Equal(first, File.ReadAllBytes(scratch.PathOf("sessions/monday.quill-usb.rest/session.json")));
        var check = StudyCheck.Run(study);
        Assert.True(check.Passed, string.Join('\n', check.Problems));
    }

    [Fact]
    public void Check_ExclusionOfTrialsThatAStickDoesNotHave_IsTold()
    {
        using var scratch = new ScratchStudy("quill-usb");
        Seal(scratch, Session(StickProcedure.Rest), Session(StickProcedure.AngleStops));
        using (var held = scratch.Study.AcquireLock("test"))
        {
            scratch.Study.AddExclusion(held, new Exclusion(SessionKey.Parse("monday.quill-usb.rest"), "somebody touched it", null, null));
            scratch.Study.AddExclusion(held, new Exclusion(SessionKey.Parse("monday.quill-usb.angle-stops"), "the jig slipped", 1, 2));
        }

        var problem = Assert.Single(StudyCheck.Run(Study.Open(scratch.Folder)).Problems);
        Assert.Equal(StudyProblemKind.ExclusionWithoutTrials, problem.Kind);
        Assert.Contains("monday.quill-usb.angle-stops names trials", problem.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Begin_KeyOfAStick_IsRefused()
    {
        using var scratch = new ScratchStudy("quill-usb");
        using var held = scratch.Study.AcquireLock("test");

        Assert.Throws<ArgumentException>(() => scratch.Study.Begin(held, ScratchStudy.Record() with { Key = SessionKey.Parse("monday.quill-usb.rest") }));
    }

    private static void Seal(ScratchStudy scratch, params StickSession[] sessions)
    {
        using var held = scratch.Study.AcquireLock("test");
        scratch.Study.SealImported(held, sessions, ScratchStudy.Import(), []);
    }

    private static StickSession Session(StickProcedure procedure)
    {
        long[] ticks = [0, 4_000, 4_000];
        double[] x = [127.5, 128, 255];
        double[] y = [1_023, 512, 0];
        var (stimulus, samples) = procedure switch
        {
            StickProcedure.AngleStops => (StickStimulus.Angle, new StickSamples(ticks, x, y, [45, double.NaN, 90])),
            StickProcedure.Substitution => (StickStimulus.Level, new StickSamples(ticks, x, y, [0, 0.25, double.NaN], [double.NaN, 0.5, 1])),
            _ => (StickStimulus.None, new StickSamples(ticks, x, y)),
        };
        return new StickSession(
            new SessionRecord
            {
                // The procedure is filled in from what was done.
                Key = new SessionKey("monday", "quill-usb"),
                Segments = [new Segment(null, 1, 1_000_000, null)],
                Stick = new StickSetup
                {
                    Procedure = procedure,
                    Source = "rig",
                    X = new StickRange(0, 255, 1),
                    Y = new StickRange(0, 1_023, null),
                    Stimulus = stimulus,
                    StimulusUncertainty = stimulus == StickStimulus.None ? null : 0.001,
                },
            },
            samples);
    }
}
