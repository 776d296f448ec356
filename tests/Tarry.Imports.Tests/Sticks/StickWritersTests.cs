using ParquetSharp;
using Tarry.Imports.Recordings;
using Tarry.Imports.Sticks;
using Tarry.Studies;
using Tarry.Studies.Sessions;
using Tarry.Studies.Sticks;
using Tarry.Studies.StudyFiles;

namespace Tarry.Imports.Tests.Sticks;

public sealed class StickWritersTests : IDisposable
{
    private readonly TemporaryFolder folder = new();

    [Theory]
    [InlineData(StickProcedure.Rest, "time_us,x,y\n0.062,127.5,-1\n250,128,512\n250,255,0.1\n")]
    [InlineData(StickProcedure.AngleStops, "time_us,x,y,stimulus_deg\n0.062,127.5,-1,45\n250,128,512,\n250,255,0.1,90\n")]
    [InlineData(StickProcedure.Substitution, "time_us,x,y,stimulus_x,stimulus_y\n0.062,127.5,-1,0,\n250,128,512,0.3333333333333333,0.5\n250,255,0.1,,1\n")]
    public void Csv_OfEachStimulus_HasTimesCountsAndWhatIsKnown(StickProcedure procedure, string expected) =>
        Assert.Equal(expected, Csv(Session(procedure)));

    [Theory]
    [InlineData(StickProcedure.Rest)]
    [InlineData(StickProcedure.AngleStops)]
    [InlineData(StickProcedure.Substitution)]
    public void Csv_ImportedAgain_GivesTheSamePositionsToTheNanosecond(StickProcedure procedure)
    {
        var session = Session(procedure);
        var (samples, setup) = (session.Samples, session.Setup);
        var options = new StickTableOptions { X = setup.X, Y = setup.Y, StimulusUncertainty = setup.StimulusUncertainty };
        var again = Assert.Single(StickTableImport.Read(folder.Write("positions.csv", Csv(session)), options, new RecordingTarget(session.Record.Key, []), null, TestContext.Current.CancellationToken).StickSessions);

        Assert.Equal(setup with { Source = "csv" }, again.Setup);
        // A tick of 16 MHz is 62.5 ns; half a nanosecond goes to the even one.
        Assert.Equal([62L, 250_000, 250_000], again.Samples.Ticks.ToArray().Select(tick => tick * 1_000_000_000 / again.Record.Segments[0].TickHz));
        Assert.Equal(samples.X.ToArray(), again.Samples.X.ToArray());
        Assert.Equal(samples.Y.ToArray(), again.Samples.Y.ToArray());
        Assert.Equal(samples.Stimulus.ToArray(), again.Samples.Stimulus.ToArray());
        Assert.Equal(samples.StimulusY.ToArray(), again.Samples.StimulusY.ToArray());
    }

    [Theory]
    [InlineData(StickProcedure.Rest)]
    [InlineData(StickProcedure.Substitution)]
    public void Parquet_OfASession_HasTheRowsOfTheCsv(StickProcedure procedure)
    {
        using var bytes = new MemoryStream();
        StickParquetWriter.Write(bytes, Session(procedure), TestContext.Current.CancellationToken);
        bytes.Position = 0;
        using var file = new ParquetFileReader(bytes);
        using var rows = file.RowGroup(0);
        var lines = Csv(Session(procedure)).Split('\n', StringSplitOptions.RemoveEmptyEntries).Select(line => line.Split(',')).ToList();

        Assert.Equal(lines[0], Enumerable.Range(0, file.FileMetaData.NumColumns).Select(column => file.FileMetaData.Schema.Column(column).Name));
        for (var column = 0; column < lines[0].Length; column++)
        {
            using var reader = rows.Column(column).LogicalReader();
            IEnumerable<double?> values = reader switch
            {
                LogicalColumnReader<double> all => all.ReadAll(3).Select(value => (double?)value),
                LogicalColumnReader<double?> some => some.ReadAll(3),
                _ => throw new InvalidOperationException($"column {column} is {reader}"),
            };
            Assert.Equal(lines[1..].Select(cells => cells[column].Length == 0 ? (double?)null : double.Parse(cells[column])), values);
        }
    }

    [Fact]
    public void Recordings_OfAStudy_SayWhatEachIsAndWhichAreSetAside()
    {
        var study = Study.Create(folder["study"], "Sticks", null, 0.5);
        using (var held = study.AcquireLock("test"))
        {
            // A factor that is called as a column of the table keeps apart from it.
            study.AddCondition(held, new ConditionEntry { Id = "quill", Factors = new Dictionary<string, string> { ["source"] = "bought, used", ["device"] = "Quill 2" } });
            study.SealImported(held, [Session(StickProcedure.Rest), Session(StickProcedure.AngleStops)], Import(), []);
        }

        File.AppendAllText(Path.Combine(study.Folder, "study.toml"), "\n[[exclude]]\nsession = \"monday.quill.angle-stops\"\nreason = \"the jig slipped, twice\"\n");
        using var text = new StringWriter();
        StickRecordingsWriter.Write(text, Study.Open(study.Folder), TestContext.Current.CancellationToken);

        var hash = new string('a', 64);
        Assert.Equal(
            $"""
            session,condition,sitting,procedure,source,positions,duration_s,rate_hz,x_minimum,x_maximum,x_step,y_minimum,y_maximum,y_step,stimulus,stimulus_unit,stimulus_uncertainty,refused,file_name,file_sha256,excluded,excluded_reason,device,factor_source
            monday.quill.rest,quill,monday,rest,rig,3,0.00025,4000.992,0,255,0.5,-1,1023,,none,,,2,"rest, first.txt",{hash},0,,Quill 2,"bought, used"
            monday.quill.angle-stops,quill,monday,angle-stops,rig,3,0.00025,4000.992,0,255,0.5,-1,1023,,angle,deg,0.4,2,"rest, first.txt",{hash},1,"the jig slipped, twice",Quill 2,"bought, used"

            """,
            text.ToString());
        Assert.Equal(text.ToString().Split('\n')[0].Split(','), StickRecordingsWriter.ColumnNames(Study.Open(study.Folder).File));
    }

    public void Dispose() => folder.Dispose();

    private static string Csv(StickSession session)
    {
        using var text = new StringWriter();
        StickCsvWriter.Write(text, session, TestContext.Current.CancellationToken);
        return text.ToString();
    }

    private static ImportRecord Import() => new() { FileName = "rest.txt", Sha256 = new string('a', 64), Format = "stick-recording", RowsRead = 5, RowsKept = 3, RefusedTotal = 2 };

    private static StickSession Session(StickProcedure procedure)
    {
        long[] ticks = [1, 4_000, 4_000];
        double[] x = [127.5, 128, 255];
        double[] y = [-1, 512, 0.1];
        var (stimulus, samples) = procedure switch
        {
            StickProcedure.AngleStops => (StickStimulus.Angle, new StickSamples(ticks, x, y, [45, double.NaN, 90])),
            StickProcedure.Substitution => (StickStimulus.Level, new StickSamples(ticks, x, y, [0, 1 / 3.0, double.NaN], [double.NaN, 0.5, 1])),
            _ => (StickStimulus.None, new StickSamples(ticks, x, y)),
        };
        return new StickSession(
            new SessionRecord
            {
                Key = new SessionKey("monday", "quill", procedure),
                Segments = [new Segment(null, 1, 16_000_000, null)],
                Source = new SourceFile("rest, first.txt", new string('a', 64), "stick-recording", new Dictionary<string, string>(), 5),
                RefusedTotal = 2,
                Stick = new StickSetup
                {
                    Procedure = procedure,
                    Source = StickSetup.FromRig,
                    X = new StickRange(0, 255, 0.5),
                    Y = new StickRange(-1, 1_023, null),
                    Stimulus = stimulus,
                    StimulusUncertainty = stimulus == StickStimulus.None ? null : 0.4,
                },
            },
            samples);
    }
}
