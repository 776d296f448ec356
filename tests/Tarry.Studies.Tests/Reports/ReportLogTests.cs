using Tarry.Studies.Reports;

namespace Tarry.Studies.Tests.Reports;

public class ReportLogTests
{
    [Fact]
    public void Select_AllOfALogInOrder_CopiesNoReport()
    {
        var log = new ReportLog();
        for (var index = 0; index < 100_000; index++)
        {
            log.Add(5_000 + (2_000L * index), 0x81, [1, 2, 3, 4, 5, 6, 7, (byte)index]);
        }

        var before = GC.GetAllocatedBytesForCurrentThread();
        var selected = log.Select(_ => true, tick => (tick - 5_000) / 1_000);
        var allocated = GC.GetAllocatedBytesForCurrentThread() - before;

        // The reports alone are 800,000 bytes.
        Assert.InRange(allocated, 0, 10_000);
        Assert.Equal((100_000, true, 199_998L, 0x81), (selected.Count, selected.IsInOrder, selected.Tick(99_999), selected.Endpoint(99_999)));
        Assert.Equal([1, 2, 3, 4, 5, 6, 7, 159], selected.Data(99_999).ToArray());
        Assert.Equal(5_000 + (2_000L * 99_999), log.Tick(99_999));
        Assert.Equal([0L, 20L], selected.Select(_ => true, tick => 10 * tick) is var twice ? [twice.Tick(0), twice.Tick(1)] : []);
        Assert.Throws<InvalidOperationException>(() => selected.Add(1_000_000, 0x81, [1]));
    }

    [Theory]
    [InlineData(30, 0x81)]
    [InlineData(10, 0x82)]
    public void Select_OutOfOrderOrOfOneEndpoint_IsInOrderAndOfThatAlone(long second, int endpoint)
    {
        var log = new ReportLog();
        log.Add(20, 0x81, [1]);
        log.Add(second, endpoint, [2]);
        log.Add(25, 0x81, [3]);

        var selected = log.Select(number => number == 0x81, tick => tick + 1);

        Assert.True(selected.IsInOrder);
        Assert.Equal(endpoint == 0x81 ? [21L, 26, 31] : [21L, 26], Enumerable.Range(0, selected.Count).Select(selected.Tick));
        Assert.Equal(endpoint == 0x81 ? [1, 3, 2] : [1, 3], Enumerable.Range(0, selected.Count).Select(index => (int)selected.Data(index)[0]));
    }

    [Theory]
    [InlineData(3)]
    [InlineData(20)]
    [InlineData(1_000)]
    public void Select_MuchOutOfOrder_IsTheStableSort(int span)
    {
        var generator = new Metrology.SeededGenerator(4);
        var ticks = Enumerable.Range(0, 500).Select(index => index + (long)generator.NextInt32(span + 1) - (span / 2)).ToList();
        var log = new ReportLog();
        for (var index = 0; index < ticks.Count; index++)
        {
            log.Add(ticks[index], 1, [(byte)index, (byte)(index >> 8)]);
        }

        var selected = log.Select(_ => true, tick => tick);

        var expected = Enumerable.Range(0, ticks.Count).OrderBy(index => ticks[index]).ToList();
        Assert.NotEqual(Enumerable.Range(0, ticks.Count), expected);
        Assert.Equal(expected, Enumerable.Range(0, selected.Count).Select(index => selected.Data(index)[0] | (selected.Data(index)[1] << 8)));
    }
}
