using Tarry.Imports.Recordings;
using Tarry.Imports.ValueChangeDump;
using Tarry.Statistics.Edges;
using Tarry.Studies.Sessions;
using Tarry.Studies.Trials;

namespace Tarry.Imports.Tests.ValueChangeDump;

public sealed class ValueChangeDumpImportTests : IDisposable
{
    private static readonly ValueChangeDumpOptions ContactToLamp = new()
    {
        PressChannel = "contact", ResponseChannel = "lamp", Window = new PairingWindow(0.5, 60),
    };

    private readonly TemporaryFolder folder = new();

    [Fact]
    public void Presses_EachAnswered_KeepTheirLatenciesToTheTick()
    {
        var plan = Read(DumpText.Presses(8_125, 3_000, 59_999));
        var (record, trials) = plan.Sessions.Single();
        Assert.Equal([8_125L, 3_000, 59_999], trials.Select(trial => trial.LatencyTicks!.Value));
        Assert.Equal([10_000L, 110_000, 210_000], trials.Select(trial => trial.PressTicks!.Value));
        Assert.All(trials, trial => Assert.Equal(Outcome.Response, trial.Outcome));
        Assert.Equal(1_000_000, record.Segments.Single().TickHz);
        Assert.Equal(new SessionKey("monday", "quill"), record.Key);
        Assert.Equal("rising", record.Source!.Options["press_edge"]);
        Assert.Equal(Convert.ToHexStringLower(System.Security.Cryptography.SHA256.HashData(File.ReadAllBytes(folder["x.vcd"]))), record.Source.Sha256);
    }

    [Fact]
    public void Presses_WithEachOutcome_AreToldApart()
    {
        // Answered, missed, early (0.2 ms), then one that the end of the recording cuts off.
        var plan = Read(DumpText.Of(
            (10_000, "1!"), (15_000, "1\""), (30_000, "0! 0\""),
            (110_000, "1!"), (130_000, "0!"),
            (210_000, "1!"), (210_200, "1\""), (230_000, "0! 0\""),
            (310_000, "1!"), (311_000, "0!")));
        var trials = plan.Sessions.Single().Trials;
        Assert.Equal([Outcome.Response, Outcome.Missed, Outcome.Early, Outcome.Refused], trials.Select(trial => trial.Outcome));
        Assert.Equal(200, trials[2].LatencyTicks);
        Assert.Equal((4, 3, 1), (plan.Record.RowsRead, plan.Record.RowsKept, plan.Record.RefusedTotal));
        Assert.Contains("ended", plan.Record.Refused.Single().Reason, StringComparison.Ordinal);
    }

    [Fact]
    public void Contact_ThatBounces_PressesOnce()
    {
        var plan = Read(DumpText.Of(
            (10_000, "1!"), (10_300, "0!"), (10_500, "1!"), (15_000, "1\""), (30_000, "0!"), (30_200, "1!"), (30_300, "0!"), (31_000, "0\""), (110_000, "0!")));
        Assert.Equal(5_000, plan.Sessions.Single().Trials.Single().LatencyTicks);
        Assert.Contains("2 edges of the press channel were taken for bounces", plan.Sessions.Single().Record.Events);
    }

    [Fact]
    public void Response_ThatComesTwice_IsFlagged()
    {
        var trial = Read(DumpText.Of((10_000, "1!"), (15_000, "1\""), (16_000, "0\""), (17_000, "1\""), (90_000, "0!"))).Sessions.Single().Trials.Single();
        Assert.Equal((5_000L, 2, TrialFlags.Bounced), (trial.LatencyTicks!.Value, trial.Edges, trial.Flags));
    }

    [Fact]
    public void Response_ThatTwoPressesCanClaim_IsGivenToNeither()
    {
        var plan = Read(DumpText.Of(
            (10_000, "1!"), (15_000, "1\""), (16_000, "0! 0\""),
            (110_000, "1!"), (120_000, "0!"), (140_000, "1!"), (155_000, "1\""), (156_000, "0\""), (300_000, "0!")));
        Assert.Equal([Outcome.Response, Outcome.Refused, Outcome.Refused], plan.Sessions.Single().Trials.Select(trial => trial.Outcome));
    }

    [Fact]
    public void Lines_ThatAreActiveLow_AreReadByTheirFallingEdges()
    {
        var text = DumpText.Of((1_000, "1! 1\""), (10_000, "0!"), (14_000, "0\""), (20_000, "1! 1\""), (100_000, "1!"));
        var plan = Read(text, ContactToLamp with { PressEdge = SignalEdge.Falling, ResponseEdge = SignalEdge.Falling });
        Assert.Equal(4_000, plan.Sessions.Single().Trials.Single().LatencyTicks);
    }

    [Fact]
    public void Level_FromUnknown_IsNoEdge()
    {
        // Ended by x and by z: when the line changed is not known, so nothing is timed by it.
        var plan = Read(DumpText.Of(
            (1_000, "x!"), (2_000, "1!"), (3_000, "0!"), (10_000, "1!"), (14_000, "1\""), (20_000, "0! 0\""),
            (110_000, "1!"), (111_000, "z\""), (112_000, "1\""), (120_000, "0! 0\""), (300_000, "0!")));
        Assert.Equal([Outcome.Response, Outcome.Refused], plan.Sessions.Single().Trials.Select(trial => trial.Outcome));
        Assert.Contains("unknown", plan.Record.Refused.Single().Reason, StringComparison.Ordinal);
    }

    [Fact]
    public void Dump_SwitchedOff_LeavesNothingInvented()
    {
        var plan = Read(DumpText.Of(
            (10_000, "1!"), (14_000, "1\""), (20_000, "0! 0\""),
            (110_000, "1!"), (111_000, "$dumpoff x! x\" $end"), (500_000, "$dumpon 0! 1\" $end"), (510_000, "0\""), (600_000, "0!")));
        Assert.Equal([Outcome.Response, Outcome.Refused], plan.Sessions.Single().Trials.Select(trial => trial.Outcome));
    }

    [Fact]
    public void Vector_ByOneBit_IsRead()
    {
        // The example of the standard: four bits [3:0]; b101 is extended with 0 to the left.
        const string text = "$timescale 10 ns $end $scope module top $end $var wire 1 ! trig $end $var wire 4 \" code [3:0] $end $upscope $end $enddefinitions $end\n"
            + "#0 $dumpvars 0! b0 \" $end #25 1! #100 b100 \" #1000 0! b1111 \" #9000000 0!";
        var plan = Read(text, new ValueChangeDumpOptions { PressChannel = "trig", ResponseChannel = "code[2]", Window = new PairingWindow(0, 1), DebounceMs = 0 });
        Assert.Equal(75, plan.Sessions.Single().Trials.Single().LatencyTicks);
        Assert.Equal(100_000_000, plan.Sessions.Single().Record.Segments.Single().TickHz);
        plan = Read(text, new ValueChangeDumpOptions { PressChannel = "!", ResponseChannel = "top.code[3]", Window = new PairingWindow(0, 1), DebounceMs = 0 });
        Assert.Equal(975, plan.Sessions.Single().Trials.Single().LatencyTicks);
    }

    [Fact]
    public void Reals_AreReadByTheirThreshold()
    {
        const string text = "$timescale 1us $end $var real 64 c contact $end $var real 64 l lamp $end $enddefinitions $end\n"
            + "#0 r0 c r0.01 l #10000 r3.3 c #12000 r0.4 l #13000 r1.7e0 l #40000 r0 c r0 l #900000 r0 c";
        var plan = Read(text, ContactToLamp with { PressThreshold = 1.6, ResponseThreshold = 1.6 });
        Assert.Equal(3_000, plan.Sessions.Single().Trials.Single().LatencyTicks);
        var error = Assert.Throws<ImportException>(() => Read(text));
        Assert.Contains("--press-threshold", error.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("1 s", 1, 1)]
    [InlineData("10 s", 1, 10)]
    [InlineData("100ms", 10, 1)]
    [InlineData("1 us", 1_000_000, 1)]
    [InlineData("100 ps", 10_000_000_000, 1)]
    [InlineData("10 fs", 100_000_000_000_000, 1)]
    public void Timescale_OfAnyUnit_GivesWholeTicks(string scale, long tickHz, long ticksPerUnit)
    {
        var text = DumpText.Of((10, "1!"), (20, "1\""), (1_000_000_000, "0!")).Replace("1 us", scale, StringComparison.Ordinal);
        var plan = Read(text, ContactToLamp with { Window = new PairingWindow(0, 200_000), DebounceMs = 0 });
        Assert.Equal(tickHz, plan.Sessions.Single().Record.Segments.Single().TickHz);
        Assert.Equal(10 * ticksPerUnit, plan.Sessions.Single().Trials.Single().LatencyTicks);
    }

    [Theory]
    [InlineData("#x", "no time")]
    [InlineData("#1\n", "goes back")]
    [InlineData("#1", "ends within the time")]
    [InlineData("\0\0\0\0", "0x00")]
    [InlineData("1", "does not say of which channel")]
    [InlineData("garbage", "neither a time nor a change")]
    [InlineData("$scope", "no place among the changes")]
    [InlineData("b01", "ends within a change")]
    [InlineData("$comment never ends", "ends within a comment")]
    public void Damage_AfterPresses_IsNamedWithItsByteAndThePressesAreKept(string damage, string problem)
    {
        var sound = DumpText.Presses(8_125, 3_000);
        var plan = Read(sound + damage);
        Assert.Equal([8_125L, 3_000], plan.Sessions.Single().Trials.Select(trial => trial.LatencyTicks!.Value));
        var item = plan.Record.Refused.Single();
        Assert.Contains(problem, item.Reason, StringComparison.Ordinal);
        var offset = int.Parse(item.Place["x.vcd byte ".Length..], System.Globalization.CultureInfo.InvariantCulture);
        Assert.InRange(offset, sound.Length, sound.Length + damage.Length);
        Assert.Equal((3, 2, 1, 1), (plan.Record.RowsRead, plan.Record.RowsKept, plan.Record.RefusedTotal, plan.Record.RefusedUnassigned));
    }

    [Theory]
    [InlineData("RIFF....WAVE", "byte 0")]
    [InlineData("$timescale 3 ns $end $enddefinitions $end", "byte 0")]
    [InlineData("$timescale 1 ns", "byte 0")]
    [InlineData("$enddefinitions $end #0", "byte 0")]
    [InlineData("$timescale 1 ns $end\n$var wire 1 ! $end $enddefinitions $end", "byte 21")]
    [InlineData("  ", "byte 2")]
    public void File_ThatIsNoDump_IsRefusedWithItsByte(string text, string place)
    {
        var error = Assert.Throws<ImportException>(() => Read(text));
        Assert.EndsWith(place, error.Place, StringComparison.Ordinal);
    }

    [Fact]
    public void Name_InTwoScopes_AsksForThePath()
    {
        const string text = "$timescale 1 us $end $scope module a $end $var wire 1 ! lamp $end $upscope $end $scope module b $end $var wire 1 \" lamp $end $var wire 1 # contact one $end $upscope $end $enddefinitions $end\n"
            + "#0 0! 0\" 0# #100 1# #150 1\" #160 1! #900000 0#";
        var options = ContactToLamp with { PressChannel = "contact one", Window = new PairingWindow(0, 60) };
        Assert.Contains("a.lamp", Assert.Throws<ImportException>(() => Read(text, options)).Message, StringComparison.Ordinal);
        Assert.Equal(60, Read(text, options with { ResponseChannel = "a.lamp" }).Sessions.Single().Trials.Single().LatencyTicks);
        Assert.Equal(50, Read(text, options with { ResponseChannel = "b.lamp" }).Sessions.Single().Trials.Single().LatencyTicks);
    }

    public void Dispose() => folder.Dispose();

    private ImportPlan Read(string text, ValueChangeDumpOptions? options = null) =>
        ValueChangeDumpImport.Read(folder.Write("x.vcd", text), options ?? ContactToLamp, new RecordingTarget(new SessionKey("monday", "quill"), []));
}
