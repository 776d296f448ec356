using Tarry.Imports.DelimitedText;
using Tarry.Studies.Sessions;
using Tarry.Studies.StudyFiles;
using Tarry.Studies.Trials;

namespace Tarry.Imports.Tests.DelimitedText;

public class LongFormWriterTests
{
    private static readonly SessionKey Key = new("monday", "quill");

    // By hand: 16,000 ticks at 16 MHz are 1,000 us; if the timer runs 100 ppm fast they are 1,000 / 1.0001 = 999.90001 us.
    [Theory]
    [InlineData(16_000_000, 0, 16_000, "1000")]
    [InlineData(16_000_000, 0, 1, "0.062")]
    [InlineData(16_000_000, 0, 3, "0.188")]
    [InlineData(16_000_000, 0, 4, "0.25")]
    [InlineData(16_000_000, 100, 16_000, "999.9")]
    [InlineData(16_000_000, -100, 16_000_000, "1000100.01")]
    [InlineData(1_000_000_000, 0, 1_700_000_000_123_456_789, "1700000000123456.789")]
    [InlineData(1_000_000, 0, 0, "0")]
    public void Write_Ticks_AreMicrosecondsByTheSegmentsClock(long tickHz, double ppm, long ticks, string expected)
    {
        var fit = ppm == 0 ? null : new ClockFitRecord(ppm, 1, 100, 60);
        var rows = Rows([], [], [new Segment(null, 1, tickHz, fit)], new Trial(1, 0, ticks, 5, null, Outcome.Response, 0, 1));
        Assert.Equal(expected, rows[1].Split(',')[3]);
    }

    [Fact]
    public void Write_EveryOutcome_IsARowAndIsCountedOnce()
    {
        Trial[] trials =
        [
            new(1, 0, 10, 8125, 8200, Outcome.Response, TrialFlags.Bounced | TrialFlags.StrayEdgeBefore, 3),
            new(2, 0, 20, null, null, Outcome.Missed, 0, 0),
            new(3, 0, null, 40, null, Outcome.Early, 0, 1),
            new(4, 0, null, null, null, Outcome.Refused, 0, 0),
            new(5, 0, 50, 8125, null, Outcome.Response, 0, 1),
        ];
        using var output = new StringWriter();
        var counts = LongFormWriter.Write(
            output,
            new StudyFile("t", null, 0.5, [], [new Exclusion(Key, "frame cap was off", 5, 9)]),
            [new SessionData(new SessionRecord { Key = Key, Segments = [new Segment(null, 1, 1_000_000, null)] }, trials, true)],
            TestContext.Current.CancellationToken);
        Assert.Equal(
            "condition,sitting,seq,press_time_us,latency_us,outcome,latency_high_us,flags,edges,excluded\n"
            + "quill,monday,1,10,8125,response,8200,5,3,0\n"
            + "quill,monday,2,20,,missed,,0,0,0\n"
            + "quill,monday,3,,40,early,,0,1,0\n"
            + "quill,monday,4,,,refused,,0,0,0\n"
            + "quill,monday,5,50,8125,response,,0,1,1\n",
            output.ToString());
        Assert.Equal(new SessionCounts(1, 1, 1, 1, 1), counts);
    }

    // OWASP, "CSV Injection": cells that begin with = + - @ tab or carriage return are taken for formulas.
    [Theory]
    [InlineData("=1+1", "'=1+1")]
    [InlineData("+1", "'+1")]
    [InlineData("-1", "'-1")]
    [InlineData("@SUM(A1)", "'@SUM(A1)")]
    [InlineData("\ttab", "'\ttab")]
    [InlineData("'=1+1", "''=1+1")]
    [InlineData("'tis 5", "'tis 5")]
    [InlineData("=a,b", "\"'=a,b\"")]
    [InlineData("Quill 2, \"blue\"", "\"Quill 2, \"\"blue\"\"\"")]
    [InlineData("# 3", "\"# 3\"")]
    [InlineData("0.1 m", "0.1 m")]
    public void Write_FactorLevel_IsQuotedAndHarmlessInASpreadsheet(string level, string cell)
    {
        var rows = Rows(new Dictionary<string, string> { ["device"] = level }, [], [new Segment(null, 1, 1_000_000, null)], new Trial(1, 0, 1, 5, null, Outcome.Response, 0, 1));
        Assert.EndsWith(",0,1,0," + cell, rows[1], StringComparison.Ordinal);
    }

    [Fact]
    public void Write_Factors_ComeInTheirUsualOrderWithTheirOwnNames()
    {
        var levels = new Dictionary<string, string> { ["battery"] = "full", ["seq"] = "x", ["link"] = "usb", ["device"] = "Quill 2" };
        var rows = Rows(levels, [], [new Segment(null, 1, 1_000_000, null)], new Trial(1, 0, 1, 5, null, Outcome.Response, 0, 1));
        Assert.EndsWith(",excluded,device,link,battery,factor_seq", rows[0], StringComparison.Ordinal);
        Assert.EndsWith(",0,Quill 2,usb,full,x", rows[1], StringComparison.Ordinal);
    }

    [Fact]
    public void Write_SessionsOutOfOrder_AreRefused()
    {
        var session = new SessionData(new SessionRecord { Key = Key, Segments = [new Segment(null, 1, 1_000_000, null)] }, [], true);
        Assert.Throws<ArgumentException>(() => LongFormWriter.Write(TextWriter.Null, new StudyFile("t", null, 0.5, [], []), [session, session], TestContext.Current.CancellationToken));
    }

    private static string[] Rows(Dictionary<string, string> factors, Exclusion[] exclusions, Segment[] segments, params Trial[] trials)
    {
        using var output = new StringWriter();
        var study = new StudyFile("t", null, 0.5, factors.Count == 0 ? [] : [new ConditionEntry { Id = Key.Condition, Factors = factors }], exclusions);
        LongFormWriter.Write(output, study, [new SessionData(new SessionRecord { Key = Key, Segments = segments }, trials, true)], TestContext.Current.CancellationToken);
        return output.ToString().Split('\n');
    }
}
