using System.Text;
using Tarry.Imports.DelimitedText;
using Tarry.Metrology;
using Tarry.Tests;

namespace Tarry.Imports.Tests.DelimitedText;

public class HostileInputTests
{
    private const string Header = "condition,sitting,seq,press_time_us,latency_us,outcome\n";

    [Theory]
    [InlineData("", "empty", "")]
    [InlineData("\uFEFF", "no header", "")]
    [InlineData("# only\n# comments\n", "no header", "")]
    [InlineData(Header, "no rows", "")]
    [InlineData("sitting,latency_us\nmonday,5\n", "looked for condition;", "--condition")]
    [InlineData("condition,latency_us\nquill,5\n", "looked for sitting or session;", "--sitting")]
    [InlineData("condition,sitting,delay\nquill,monday,5\n", "'delay'", "--latency-column")]
    [InlineData("condition,sitting,latency\nquill,monday,5\n", "unit of the column 'latency'", "--latency-unit")]
    [InlineData("condition,sitting,latency_us,latency_ms\nquill,monday,5,5\n", "could both be meant", "--latency-column")]
    [InlineData("condition,sitting,session,latency_us\nquill,monday,a,5\n", "could both be meant", "--sitting-column")]
    [InlineData("condition,Condition,sitting,latency_us\nquill,a,monday,5\n", "could both be meant", "Rename")]
    [InlineData("condition|sitting|latency_us\nquill|monday|5\n", "no column for condition", "--delimiter")]
    [InlineData("a\0b,c\n1,2\n", "not UTF-8 text", "UTF-8")]
    [InlineData("\"condition,sitting\n", "quotation mark", "header")]
    [InlineData(Header + "quill,monday,1,0,x,response\n", "None of the 1 rows", "options")]
    public void Read_FileOfWhichNothingCanBeKept_SaysWhatAndWhatToDo(string text, string problem, string remedy)
    {
        var refused = Refused(Encoding.UTF8.GetBytes(text));
        Assert.Contains(problem, refused.Problem, StringComparison.Ordinal);
        Assert.Contains(remedy, refused.Remedy, StringComparison.Ordinal);
        Assert.StartsWith("rows.csv", refused.Place, StringComparison.Ordinal);
    }

    [Fact]
    public void Read_Utf16_SaysSo()
    {
        var text = Header + "quill,monday,1,0,5,response\n";
        foreach (var encoding in new[] { Encoding.Unicode, Encoding.BigEndianUnicode })
        {
            Assert.Contains("UTF-16", Refused([.. encoding.GetPreamble(), .. encoding.GetBytes(text)]).Problem, StringComparison.Ordinal);
            Assert.Contains("UTF-16", Refused(encoding.GetBytes(text)).Problem, StringComparison.Ordinal);
        }
    }

    [Fact(Timeout = 20_000)]
    public async Task Read_PipeThatNobodyWritesTo_IsRefusedAndNotWaitedFor()
    {
        Requirement.Program("mkfifo", "coreutils");
        using var folder = new TemporaryFolder();
        using var made = System.Diagnostics.Process.Start("mkfifo", folder["pipe"]);
        await made.WaitForExitAsync(TestContext.Current.CancellationToken);
        var refused = await Task.Run(() => Assert.Throws<ImportException>(() => Read(folder["pipe"])), TestContext.Current.CancellationToken);
        Assert.Contains("pipe", refused.Problem, StringComparison.Ordinal);
    }

    [Fact]
    public void Read_MissingFileOrFolder_SaysSo()
    {
        using var folder = new TemporaryFolder();
        Assert.Contains("no such file", Assert.Throws<ImportException>(() => Read(folder["none.csv"])).Problem, StringComparison.Ordinal);
        Assert.Contains("folder", Assert.Throws<ImportException>(() => Read(folder.Path)).Problem, StringComparison.Ordinal);
    }

    [Fact]
    public void Read_ConditionColumnAndOption_AreNotMerged()
    {
        using var folder = new TemporaryFolder();
        var path = folder.Write("rows.csv", Header + "quill,monday,1,0,5,response\n");
        var refused = Assert.Throws<ImportException>(() => DelimitedTextImport.Read([path], new DelimitedTextOptions { Condition = "board" }, [], cancellation: TestContext.Current.CancellationToken));
        Assert.Contains("--condition board", refused.Problem, StringComparison.Ordinal);
    }

    [Fact]
    public void Read_ExclusionsInEveryOtherRow_AreNotPutIntoTheStudyFile()
    {
        var rows = string.Concat(Enumerable.Range(1, 1_100).Select(number => $"quill,monday,{number},5,{number % 2}\n"));
        var refused = Refused(Encoding.UTF8.GetBytes("condition,sitting,seq,latency_us,excluded\n" + rows));
        Assert.Contains("550 separate stretches", refused.Problem, StringComparison.Ordinal);
    }

    [Fact]
    public void Read_HeaderLineWithoutEnd_IsRefusedWithItsLine()
    {
        var refused = Refused(Encoding.UTF8.GetBytes("# one line\n" + new string('x', 3_000_000)));
        Assert.Equal("rows.csv line 2", refused.Place);
        Assert.Contains("longer than", refused.Problem, StringComparison.Ordinal);
    }

    [Fact]
    public void Read_MoreSessionsThanAnyBenchRuns_PointsAtTheColumn()
    {
        var rows = string.Concat(Enumerable.Range(1, 10_001).Select(number => $"quill,{number},5\n"));
        var refused = Refused(Encoding.UTF8.GetBytes("condition,sitting,latency_us\n" + rows));
        Assert.Equal("rows.csv line 10002", refused.Place);
        Assert.Contains("column", refused.Remedy, StringComparison.Ordinal);
    }

    [Fact]
    public void Read_RandomBytes_EndInAnImportExceptionAndNothingElse()
    {
        var random = new SeededGenerator(3);
        for (var number = 0; number < 200; number++)
        {
            var bytes = new byte[random.NextInt32(4_000)];
            foreach (ref var value in bytes.AsSpan())
            {
                value = (byte)random.NextUInt64();
            }

            Refused(bytes);
            var withHeader = Refused([.. Encoding.UTF8.GetBytes(Header), .. bytes]);
            Assert.NotEmpty(withHeader.Remedy);
        }
    }

    [Fact]
    public void Read_LineOf300MB_TakesLittleMemoryAndCostsOneRow()
    {
        using var folder = new TemporaryFolder();
        var path = folder["rows.csv"];
        using (var file = File.Create(path))
        {
            file.Write(Encoding.UTF8.GetBytes(Header + "quill,monday,1,0,5,response\n"));
            file.Write("quill,"u8);
            file.SetLength(300_000_000);
            file.Seek(0, SeekOrigin.End);
            file.Write("\nquill,monday,2,1,5,response\n"u8);
        }

        var before = GC.GetAllocatedBytesForCurrentThread();
        var plan = Read(path);
        Assert.InRange(GC.GetAllocatedBytesForCurrentThread() - before, 0, 8_000_000);
        Assert.Equal((3, 2), (plan.Record.RowsRead, plan.Record.RowsKept));
        Assert.Equal("rows.csv line 3", Assert.Single(plan.Record.Refused).Place);
    }

    private static ImportPlan Read(string path) => Assert.Single(DelimitedTextImport.Read([path], new DelimitedTextOptions(), [], cancellation: TestContext.Current.CancellationToken));

    private static ImportException Refused(byte[] bytes)
    {
        using var folder = new TemporaryFolder();
        var path = folder.Write("rows.csv", bytes);
        return Assert.Throws<ImportException>(() => Read(path));
    }
}
