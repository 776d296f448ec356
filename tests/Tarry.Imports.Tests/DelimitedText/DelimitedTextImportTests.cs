using System.Security.Cryptography;
using Tarry.Imports.DelimitedText;
using Tarry.Studies.StudyFiles;
using Tarry.Studies.Trials;

namespace Tarry.Imports.Tests.DelimitedText;

public class DelimitedTextImportTests
{
    private const string Header = "condition,sitting,seq,press_time_us,latency_us,outcome\n";

    [Fact]
    public void Read_LongForm_GivesSessionsByKeyWithTheirTrials()
    {
        var plan = Import(Header
            + "quill,tuesday,1,0,8125,response\nquill,monday,1,0,8000,response\nboard,monday,1,10,200,response\n"
            + "quill,monday,2,50000,,missed\nquill,monday,3,100000,12.5,early\n");
        Assert.Equal(["monday.board", "monday.quill", "tuesday.quill"], plan.Sessions.Select(session => session.Record.Key.ToString()));
        var (record, trials) = plan.Sessions[1];
        Assert.Equal(
            [new(1, 0, 0, 8_000_000, null, Outcome.Response, TrialFlags.None, 0), new(2, 0, 50_000_000, null, null, Outcome.Missed, TrialFlags.None, 0), new(3, 0, 100_000_000, 12_500, null, Outcome.Early, TrialFlags.None, 0)],
            trials);
        Assert.Equal(1_000_000_000, Assert.Single(record.Segments).TickHz);
        Assert.Equal(1_000_000, Assert.Single(plan.Sessions[0].Record.Segments).TickHz);
        Assert.Equal(200, Assert.Single(plan.Sessions[0].Trials).LatencyTicks);
        Assert.Equal(["quill", "board"], plan.NewConditions.Select(condition => condition.Id));
        Assert.Equal((5, 5, 0, 0), (plan.Record.RowsRead, plan.Record.RowsKept, plan.Record.RefusedTotal, plan.Record.RefusedUnassigned));
    }

    [Fact]
    public void Read_OnlyLatencies_NumbersInFileOrderAndReadsAnEmptyCellAsMissed()
    {
        var plan = Import("latency_ms\n8.125\n\n# pause\nNA\n7\n", new DelimitedTextOptions { Condition = "quill", Sitting = "monday" });
        var trials = Assert.Single(plan.Sessions).Trials;
        Assert.Equal([1, 2, 3], trials.Select(trial => trial.Sequence));
        Assert.Equal([8_125, null, 7_000], trials.Select(trial => trial.LatencyTicks));
        Assert.Equal([Outcome.Response, Outcome.Missed, Outcome.Response], trials.Select(trial => trial.Outcome));
        Assert.All(trials, trial => Assert.Null(trial.PressTicks));
    }

    [Theory]
    [InlineData("Latency (ms)", "Press time [s]")]
    [InlineData("latency[ms]", "PRESS_TIME (s)")]
    [InlineData("latency ( ms )", "press_time_s")]
    public void Read_UnitsInBrackets_AreThoseOfTheColumns(string latency, string pressTime)
    {
        var trial = Assert.Single(Assert.Single(Import($"{latency},{pressTime}\n8.125,2\n", new DelimitedTextOptions { Condition = "quill", Sitting = "monday" }).Sessions).Trials);
        Assert.Equal((8_125L, 2_000_000L), (trial.LatencyTicks, trial.PressTicks));
    }

    [Theory]
    [InlineData("delay (ms)", 8_125L)]
    [InlineData("delay [ns]", 8L)]
    public void Read_NamedColumnWithItsUnitInBrackets_TakesThatUnit(string name, long microseconds)
    {
        var value = name.EndsWith("[ns]", StringComparison.Ordinal) ? "8000" : "8.125";
        var options = new DelimitedTextOptions { Condition = "quill", Sitting = "monday", LatencyColumn = name };
        Assert.Equal(microseconds, Assert.Single(Assert.Single(Import($"{name}\n{value}\n", options).Sessions).Trials).LatencyTicks);
    }

    [Fact]
    public void Read_SeparatorStatedByTheFirstLine_CountsItAsALineAndDoesNotLoseWhatFollowsABadRow()
    {
        var plan = Import("sep=;\nlatency_ms;outcome\n8.125;response\n\"7;response\n6;response\n", new DelimitedTextOptions { Condition = "quill", Sitting = "monday" });
        Assert.Equal([8_125L, null, 6_000L], Assert.Single(plan.Sessions).Trials.Select(trial => trial.LatencyTicks));
        Assert.Equal([Outcome.Response, Outcome.Refused, Outcome.Response], plan.Sessions[0].Trials.Select(trial => trial.Outcome));
        Assert.Contains("line 4", Assert.Single(plan.Record.Refused).Place, StringComparison.Ordinal);
        Assert.Equal(";", plan.Record.Options["delimiter"]);
    }

    [Theory]
    [InlineData("Pad;Day;No;Delay\nquill;monday;1;8,125\n")]
    [InlineData("Pad\tDay\tNo\tDelay\nquill\tmonday\t1\t8,125\n")]
    [InlineData("Pad,Day,No,Delay\r\nquill,monday,1,\"8,125\"")]
    [InlineData("sep=;\r\nPad;Day;No;Delay\r\nquill;monday;1;8,125\r\n")]
    [InlineData("\uFEFFSEP=|\nPad|Day|No|Delay\nquill|monday|1|8,125\n")]
    public void Read_ForeignHeaderAndDecimalComma_FollowsTheOptions(string text)
    {
        var options = new DelimitedTextOptions
        {
            ConditionColumn = "pad", SittingColumn = "DAY", SequenceColumn = "no", LatencyColumn = "delay", LatencyUnit = TimeUnit.Milliseconds, DecimalComma = true,
        };
        var plan = Import(text, options);
        Assert.Equal(8_125, Assert.Single(Assert.Single(plan.Sessions).Trials).LatencyTicks);
        Assert.Equal("ms", plan.Record.Options["latency_unit"]);
    }

    // Each bad row stands between two good ones; line 3 is the bad one. The reason must name what was met.
    [Theory]
    [InlineData("quill,monday,2,1,5", "5 cells")]
    [InlineData("quill,monday,2,1,5,response,more", "7 cells")]
    [InlineData("quill,monday,2,1,fast,response", "'fast' is not a number")]
    [InlineData("quill,monday,2,1,NaN,response", "'NaN' is not a number")]
    [InlineData("quill,monday,2,1,inf,response", "'inf' is not a number")]
    [InlineData("quill,monday,2,soon,5,response", "'soon' is not a number")]
    [InlineData("quill,monday,2,-1,5,response", "out of range")]
    [InlineData("quill,monday,two,1,5,response", "'two' is not a number")]
    [InlineData("quill,monday,-2,1,5,response", "out of range")]
    [InlineData("quill,monday,2.5,1,5,response", "'2.5' is not a number")]
    [InlineData("quill,monday,,1,5,response", "seq is empty")]
    [InlineData("quill,monday,2,1,-5,response", "out of range")]
    [InlineData("quill,monday,2,1,-0.0001,response", "out of range")]
    [InlineData("quill,monday,2,1,3600000001,response", "one hour")]
    [InlineData("quill,monday,2,1,,response", "a response without a latency")]
    [InlineData("quill,monday,2,1,5,missed", "a missed trial with a latency")]
    [InlineData("quill,monday,2,1,5,perhaps", "'perhaps' is not response")]
    [InlineData("quill,monday,2,1,,refused", "marked as refused")]
    [InlineData("quill,monday,1,1,5,response", "sequence number 1 is in monday.quill already")]
    [InlineData("quill,monday,2,1,5\0,response", "is not a number")]
    [InlineData("quill,monday,2,1,\"5,response", "quotation mark")]
    [InlineData("quill,monday,2,1,\"5\"x,response", "quotation mark")]
    public void Read_BadRowOfAKnownSession_BecomesARefusedTrialWithItsLineAndReason(string bad, string reason)
    {
        var plan = Import(Header + "quill,monday,1,0,5,response\n" + bad + "\nquill,monday,3,2,3600000000,response\n");
        var (record, trials) = Assert.Single(plan.Sessions);
        var item = Assert.Single(record.Refused);
        Assert.Equal("rows.csv line 3", item.Place);
        Assert.Contains(reason, item.Reason, StringComparison.Ordinal);
        Assert.Equal(1, record.RefusedTotal);
        Assert.Equal(2, trials.Count(trial => trial.Outcome == Outcome.Response));
        Assert.Null(Assert.Single(trials, trial => trial.Outcome == Outcome.Refused).LatencyTicks);
        Assert.Equal(3, trials.Select(trial => trial.Sequence).Distinct().Count());
        Assert.Equal((3, 2, 1, 0), (plan.Record.RowsRead, plan.Record.RowsKept, plan.Record.RefusedTotal, plan.Record.RefusedUnassigned));
        Assert.Equal(1, Assert.Single(plan.Record.RefusedByReason).Value);
    }

    [Theory]
    [InlineData(",monday,2,1,5,response", "the condition is empty")]
    [InlineData("quill,,2,1,5,response", "the sitting is empty")]
    [InlineData("???,monday,2,1,5,response", "no name can be made")]
    [InlineData("Quill,monday,2,1,5,response", "would become quill")]
    [InlineData("qu\0ll,monday,2,1,5,response", "not UTF-8 text")]
    [InlineData("quill", "1 cells")]
    [InlineData("\"quill,monday,2,1,5,response", "quotation mark")]
    public void Read_BadRowOfNoSession_IsCountedAsUnassigned(string bad, string reason)
    {
        var plan = Import(Header + "quill,monday,1,0,5,response\n" + bad + "\nquill,monday,3,2,5,response\n");
        Assert.Equal(2, Assert.Single(plan.Sessions).Trials.Count);
        var item = Assert.Single(plan.Record.Refused);
        Assert.Equal("rows.csv line 3", item.Place);
        Assert.Contains(reason, item.Reason, StringComparison.Ordinal);
        Assert.Equal((3, 2, 1, 1), (plan.Record.RowsRead, plan.Record.RowsKept, plan.Record.RefusedTotal, plan.Record.RefusedUnassigned));
    }

    [Fact]
    public void Read_RefusedRowWhoseNumberIsTaken_IsNumberedBehindTheLast()
    {
        var plan = Import(Header + "quill,monday,5,0,5,response\nquill,monday,5,1,6,response\nquill,monday,9,2,7,response\n");
        var (record, trials) = Assert.Single(plan.Sessions);
        Assert.Equal([5, 9, 10], trials.Select(trial => trial.Sequence));
        Assert.Equal([5, 7, null], trials.Select(trial => trial.LatencyTicks));
        Assert.Contains(record.Events, said => said.Contains("from 10", StringComparison.Ordinal));
    }

    [Fact]
    public void Read_NumbersFromZeroInAnyOrder_AreOneMoreAndSorted()
    {
        var plan = Import(Header + "quill,monday,2,20,7,response\nquill,monday,0,0,5,response\nquill,monday,1,10,6,response\n");
        var (record, trials) = Assert.Single(plan.Sessions);
        Assert.Equal([1, 2, 3], trials.Select(trial => trial.Sequence));
        Assert.Equal([5, 6, 7], trials.Select(trial => trial.LatencyTicks));
        Assert.Single(record.Segments);
        Assert.Contains(record.Events, said => said.Contains("numbers from 0", StringComparison.Ordinal));
    }

    [Fact]
    public void Read_PressClockThatGoesBack_BeginsASegmentAndSaysWhere()
    {
        var plan = Import(Header + "quill,monday,1,100,5,response\nquill,monday,2,200,5,response\nquill,monday,3,,5,response\nquill,monday,4,150,5,response\nquill,monday,5,160,5,response\n");
        var (record, trials) = Assert.Single(plan.Sessions);
        Assert.Equal([1, 4], record.Segments.Select(segment => segment.FirstSequence));
        Assert.Equal([0, 0, 0, 1, 1], trials.Select(trial => trial.Segment));
        Assert.Contains("the press clock went back at line 5", Assert.Single(record.Events), StringComparison.Ordinal);
    }

    [Fact]
    public void Read_FactorColumns_DeclareTheConditionAndAConflictIsRefused()
    {
        var plan = Import(
            "condition,sitting,latency_us,Device,link,nominal_report_hz,battery,note\n"
            + "quill,monday,5,\"Quill 2, \"\"blue\"\"\nedition\",usb,500,full,x\nquill,monday,6,,,,,y\nquill,monday,7,,radio,,,z\nquill,monday,8,,,125,,z\nquill,monday,9,,usb,500.0,full,z\n",
            new DelimitedTextOptions { FactorColumns = ["battery"] });
        var condition = Assert.Single(plan.NewConditions);
        Assert.Equal(
            new Dictionary<string, string> { ["device"] = "Quill 2, \"blue\" edition", ["link"] = "usb", ["battery"] = "full" },
            condition.Factors.ToDictionary());
        Assert.Equal(500, condition.NominalReportHz);
        Assert.Equal((3, 2), (plan.Record.RowsKept, plan.Record.RefusedTotal));
        Assert.Equal(["rows.csv line 5", "rows.csv line 6"], plan.Record.Refused.Select(item => item.Place));
        Assert.Contains(plan.Notes, note => note.Contains("'note'", StringComparison.Ordinal));
    }

    [Fact]
    public void Read_RowWithAFactorConflict_KeepsItsNumberAndPressTime()
    {
        var plan = Import("condition,sitting,seq,press_time_us,latency_us,link\nquill,monday,1,0,5,usb\nquill,monday,2,10,5,radio\nquill,monday,3,20,5,usb\n");
        Assert.Equal(new Trial(2, 0, 10, null, null, Outcome.Refused, TrialFlags.None, 0), Assert.Single(plan.Sessions).Trials[1]);
    }

    [Fact]
    public void Read_ConditionThatTheStudyHas_IsHeldAgainstItAndNotDeclaredAgain()
    {
        var existing = new ConditionEntry { Id = "quill", Factors = new Dictionary<string, string> { ["link"] = "usb" } };
        var plan = Import("condition,sitting,latency_us,link,layer\nquill,monday,5,usb,none\nquill,monday,6,radio,none\n", conditions: [existing]);
        Assert.Empty(plan.NewConditions);
        Assert.Equal((1, 1), (plan.Record.RowsKept, plan.Record.RefusedTotal));
        Assert.Contains(plan.Notes, note => note.Contains("does not state layer of quill", StringComparison.Ordinal));
    }

    [Fact]
    public void Read_TextsThatAreNoNames_AreRenamedAndKept()
    {
        var plan = Import("condition,session,latency_us\n Quill 2 (blue) ,Monday 3 pm,5\n");
        var (record, _) = Assert.Single(plan.Sessions);
        Assert.Equal("monday-3-pm.quill-2-blue", record.Key.ToString());
        Assert.Equal("Quill 2 (blue)", Assert.Single(plan.NewConditions).Factors["device"]);
        Assert.Equal("Monday 3 pm", record.Source!.Options["sitting_text"]);
        Assert.Equal(2, plan.Notes.Count);
    }

    [Fact]
    public void Read_ExcludedColumn_BecomesExclusionsInStretches()
    {
        var plan = Import("condition,sitting,seq,latency_us,excluded\nquill,monday,1,5,1\nquill,monday,2,5,1\nquill,monday,3,5,0\nquill,monday,4,5,1\n");
        Assert.Equal([(1L, 2L), (4L, 4L)], plan.Exclusions.Select(exclusion => (exclusion.FirstSequence!.Value, exclusion.LastSequence!.Value)));
    }

    [Fact]
    public void Read_AnyFile_ComputesItsSha256()
    {
        var text = Header + "quill,monday,1,0,5,response\nquill,monday,2,0,\"5,response\nquill,monday,3,0,5,response\n";
        Assert.Equal(Convert.ToHexStringLower(SHA256.HashData(System.Text.Encoding.UTF8.GetBytes(text))), Import(text).Record.Sha256);
    }

    [Fact]
    public void Read_OneSessionInTwoFiles_IsRefusedWithBothNames()
    {
        using var folder = new TemporaryFolder();
        var paths = new[] { folder.Write("one.csv", Header + "quill,monday,1,0,5,response\n"), folder.Write("two.csv", Header + "quill,monday,2,0,5,response\n") };
        var refused = Assert.Throws<ImportException>(() => DelimitedTextImport.Read(paths, new DelimitedTextOptions(), [], cancellation: TestContext.Current.CancellationToken));
        Assert.Equal("two.csv line 2", refused.Place);
        Assert.Contains("one.csv", refused.Problem, StringComparison.Ordinal);
    }

    [Fact]
    public void Read_OneConditionInTwoFiles_IsNewInTheFirst()
    {
        using var folder = new TemporaryFolder();
        var paths = new[] { folder.Write("one.csv", Header + "quill,monday,1,0,5,response\n"), folder.Write("two.csv", Header + "quill,tuesday,1,0,5,response\n") };
        var plans = DelimitedTextImport.Read(paths, new DelimitedTextOptions(), [], cancellation: TestContext.Current.CancellationToken);
        Assert.Equal([1, 0], plans.Select(plan => plan.NewConditions.Count));
    }

    [Fact]
    public void Read_Cancelled_Stops()
    {
        using var folder = new TemporaryFolder();
        var path = folder.Write("rows.csv", Header + string.Concat(Enumerable.Range(1, 70_000).Select(number => $"quill,monday,{number},{number},5,response\n")));
        using var stop = new CancellationTokenSource();
        stop.Cancel();
        Assert.Throws<OperationCanceledException>(() => DelimitedTextImport.Read([path], new DelimitedTextOptions(), [], null, stop.Token));
    }

    private static ImportPlan Import(string text, DelimitedTextOptions? options = null, IReadOnlyList<ConditionEntry>? conditions = null)
    {
        using var folder = new TemporaryFolder();
        return Assert.Single(DelimitedTextImport.Read([folder.Write("rows.csv", text)], options ?? new DelimitedTextOptions(), conditions ?? [], cancellation: TestContext.Current.CancellationToken));
    }
}
