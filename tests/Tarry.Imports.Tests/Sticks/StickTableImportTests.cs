using Tarry.Imports.DelimitedText;
using Tarry.Imports.Recordings;
using Tarry.Imports.Sticks;
using Tarry.Studies.Sessions;
using Tarry.Studies.Sticks;

namespace Tarry.Imports.Tests.Sticks;

public sealed class StickTableImportTests : IDisposable
{
    private static readonly StickTableOptions Bytes = new() { X = new StickRange(0, 255, null), Y = new StickRange(0, 255, null) };
    private readonly TemporaryFolder folder = new();

    [Fact]
    public void Positions_OfCounts_AreKeptAsTheyAreWithAStepOfOne()
    {
        var plan = Read("time_us,x,y\n1000,128,127\n5000,255,0\n5000,254,1\n");
        var session = Assert.Single(plan.StickSessions);

        Assert.Equal("monday.quill-usb.rest", session.Record.Key.ToString());
        Assert.Equal([1_000L, 5_000, 5_000], session.Samples.Ticks.ToArray());
        Assert.Equal([128.0, 255, 254], session.Samples.X.ToArray());
        Assert.Equal([127.0, 0, 1], session.Samples.Y.ToArray());
        Assert.Equal(1_000_000, session.Record.Segments.Single().TickHz);
        Assert.Equal(new StickSetup { Procedure = StickProcedure.Rest, Source = "csv", X = new StickRange(0, 255, 1), Y = new StickRange(0, 255, 1) }, session.Setup);
        Assert.Equal((3, 3, 0), (plan.Record.RowsRead, plan.Record.RowsKept, plan.Record.RefusedTotal));
        Assert.Equal("control", Assert.Single(Assert.Single(plan.NewConditions).Factors).Key);
    }

    [Fact]
    public void Positions_OfSharesOfTheRange_HaveNoStepAndNanoseconds()
    {
        var session = Read("time_ms;lx;ly\n0,0005;-0,5;1\n0,001;0,25;-1\n", new()
        {
            X = new StickRange(-1, 1, null),
            Y = new StickRange(-1, 1, null),
            XColumn = "lx",
            YColumn = "ly",
            Vertical = VerticalDirection.Down,
            Text = new DelimitedTextOptions { DecimalComma = true },
        }).StickSessions.Single();

        Assert.Equal([500L, 1_000], session.Samples.Ticks.ToArray());
        Assert.Equal(1_000_000_000, session.Record.Segments.Single().TickHz);
        Assert.Equal([-0.5, 0.25], session.Samples.X.ToArray());
        Assert.Equal([-1.0, 1], session.Samples.Y.ToArray());
        Assert.Null(session.Setup.X.Step);
    }

    [Fact]
    public void Step_OfMoreThanTheRange_IsRefused()
    {
        var wide = new StickRange(0, 255, 256);

        var failure = Assert.Throws<ImportException>(() => Read("time_us,x,y\n1,128,128\n", Bytes with { X = wide, Y = wide }));

        Assert.Contains("256", failure.Message, StringComparison.Ordinal);
        Assert.Contains("--step", failure.Remedy, StringComparison.Ordinal);
        Assert.Single(Read("time_us,x,y\n1,0,255\n", Bytes with { X = wide with { Step = 255 }, Y = wide with { Step = 255 } }).StickSessions);
    }

    [Theory]
    [InlineData("us", true)] // 4,000 us written as 4: 250,000 a second
    [InlineData("ms", false)]
    public void Times_ThatComeSoonerThanReportsCan_AreCautioned(string unit, bool cautioned)
    {
        var rows = string.Concat(Enumerable.Range(0, 200).Select(index => FormattableString.Invariant($"{4 * index},{128 + (index % 2)},128\n")));

        var cautions = Read($"time_{unit},x,y\n{rows}").Cautions;

        Assert.Equal(cautioned, cautions.Any(caution => caution.Contains("unit of the times", StringComparison.Ordinal)));
    }

    [Fact]
    public void Times_AllAlike_AreCautioned()
    {
        var rows = string.Concat(Enumerable.Range(0, 200).Select(index => FormattableString.Invariant($"0,{128 + (index % 2)},128\n")));

        Assert.Contains("200 positions in 0 s", Assert.Single(Read($"time_us,x,y\n{rows}").Cautions), StringComparison.Ordinal);
    }

    [Fact]
    public void Vertical_Down_IsTurnedAboutTheRange()
    {
        // 0 pushed away from the player, 255 towards: up must be the greater one.
        var session = Read("time_us,x,y\n0,128,0\n1,128,255\n2,128,100\n", Bytes with { Vertical = VerticalDirection.Down }).StickSessions.Single();

        Assert.Equal([255.0, 0, 155], session.Samples.Y.ToArray());
    }

    [Fact]
    public void Stimulus_OfAngleStops_IsKeptAndMayBeUnknownMeanwhile()
    {
        var session = Read("time_us,x,y,stimulus_deg\n0,255,128,0\n1,200,200,\n2,128,255,90\n", Bytes with { StimulusUncertainty = 0.2 }, StickProcedure.AngleStops).StickSessions.Single();

        Assert.Equal((StickStimulus.Angle, 0.2), (session.Setup.Stimulus, session.Setup.StimulusUncertainty));
        Assert.Equal([0, double.NaN, 90], session.Samples.Stimulus.ToArray());
    }

    [Fact]
    public void Stimulus_InVolts_BecomesAShareOfTheSupply()
    {
        var session = Read("time_us,x,y,vx,vy\n0,0,128,0,\n1,128,128,1.65,3.3\n", Bytes with { LevelXColumn = "vx", LevelYColumn = "vy", Supply = 3.3 }, StickProcedure.Substitution).StickSessions.Single();

        Assert.Equal(StickStimulus.Level, session.Setup.Stimulus);
        Assert.Equal([0, 0.5], session.Samples.Stimulus.ToArray());
        Assert.Equal([double.NaN, 1], session.Samples.StimulusY.ToArray());
    }

    [Fact]
    public void Rows_ThatCannotBe_AreRefusedWithLineAndReasonAndTheRestIsKept()
    {
        var plan = Read("time_us,x,y,stimulus_deg\n0,1,2,10\n1,1,2\n2,left,2,\n3,256,2,\n4,1,,\n1,1,2,\n5,1,2,400\n6,\"1,2,\n7,3,4,\n", Bytes, StickProcedure.AngleStops);

        Assert.Equal([1.0, 1, 3], plan.StickSessions.Single().Samples.X.ToArray());
        Assert.Equal((9, 3, 6), (plan.Record.RowsRead, plan.Record.RowsKept, plan.Record.RefusedTotal));
        Assert.Equal(["3", "4", "5", "6", "8", "9"], plan.Record.Refused.Select(item => item.Place.Split(' ')[^1]));
        Assert.Equal("x is 256, outside 0..255", plan.Record.Refused.Single(item => item.Place == "x.csv line 5").Reason);
        Assert.Equal(2, plan.Record.RefusedByReason["a number outside its range"]);
    }

    [Fact]
    public void Time_ThatGoesBack_IsRefused()
    {
        var plan = Read("time_s,x,y\n0.2,1,2\n0.1,1,2\n0.3,1,3\n");

        Assert.Equal("a time before that of the row before", Assert.Single(plan.Record.RefusedByReason).Key);
        Assert.Equal([200_000L, 300_000], plan.StickSessions.Single().Samples.Ticks.ToArray());
    }

    [Theory]
    [InlineData("time_us,x\n0,1\n", "There is no column for the y axis", "--y-column")]
    [InlineData("time,x,y\n0,1,2\n", "The unit of the column 'time' is not known", "--time-unit")]
    [InlineData("time_us,x,y,X\n0,1,2,3\n", "could both be meant", "--x-column")]
    [InlineData("time_us,x,y\n", "no rows below the header", "at least one row")]
    [InlineData("time_us,x,y\n0,300,1\n1,400,1\n", "None of the 2 rows could be kept", "--x-range")]
    [InlineData("time_us,x,y,stimulus_deg,stimulus_x\n0,1,2,3,0.5\n", "an angle and a level", "rename or remove")]
    public void Table_ThatCannotBeRead_IsRefusedWithARemedy(string text, string problem, string remedy)
    {
        var refused = Assert.Throws<ImportException>(() => Read(text));

        Assert.Contains(problem, refused.Message, StringComparison.Ordinal);
        Assert.Contains(remedy, refused.Remedy, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(StickProcedure.AngleStops, "stimulus_deg")]
    [InlineData(StickProcedure.Substitution, "stimulus_x")]
    public void Procedure_WithoutTheStimulusThatItIsAbout_IsRefused(StickProcedure procedure, string remedy) =>
        Assert.Contains(remedy, Assert.Throws<ImportException>(() => Read("time_us,x,y\n0,1,2\n", Bytes, procedure)).Remedy, StringComparison.Ordinal);

    [Fact]
    public void Positions_ThatNeverMoveOrStayFarFromTheGate_AreCautionedOf()
    {
        Assert.Contains("every position is the same", Assert.Single(Read("time_us,x,y\n0,1,2\n1,1,2\n").Cautions), StringComparison.Ordinal);
        Assert.Contains("the range may be a wrong one", Assert.Single(Read("time_us,x,y\n0,100,2\n1,130,2\n", Bytes, StickProcedure.RimSweep).Cautions), StringComparison.Ordinal);
        Assert.Empty(Read("time_us,x,y\n0,100,2\n1,130,2\n").Cautions);
    }

    public void Dispose() => folder.Dispose();

    private ImportPlan Read(string text, StickTableOptions? options = null, StickProcedure procedure = StickProcedure.Rest) => StickTableImport.Read(
        folder.Write("x.csv", text), options ?? Bytes, new RecordingTarget(new SessionKey("monday", "quill-usb", procedure), []));
}
