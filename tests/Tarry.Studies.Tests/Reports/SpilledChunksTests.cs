using Tarry.Studies.Reports;

namespace Tarry.Studies.Tests.Reports;

public class SpilledChunksTests
{
    private const int Length = 100;

    [Theory]
    [InlineData(1, 0)]
    [InlineData(3, 3)]
    [InlineData(4, 3)]
    [InlineData(40, 3)]
    [InlineData(40, 0)]
    public void Chunks_InMemoryOrInTheFile_HoldWhatWasPutIn(int count, int inMemory)
    {
        var chunks = new SpilledChunks<long>(Length, inMemory);
        Fill(chunks, count);

        Assert.Equal(count, chunks.Count);
        // Forwards, backwards and by leaps, so that what was read last is never what is asked for.
        foreach (var index in Enumerable.Range(0, count).Concat(Enumerable.Range(0, count).Reverse()).Concat(Enumerable.Range(0, count).Select(index => index * 7 % count)))
        {
            Assert.Equal(Enumerable.Range(0, Length).Select(value => (1_000_000L * index) + value), chunks[index]);
        }
    }

    [Fact]
    public void Chunks_ReadByManyThreads_AreTheSameForEach()
    {
        var chunks = new SpilledChunks<long>(Length, 2);
        Fill(chunks, 50);

        Parallel.For(0, 20_000, at => Assert.Equal((1_000_000L * (at * 13 % 50)) + (at % Length), chunks[at * 13 % 50][at % Length]));
    }

    [Fact]
    public void Begin_TheFirstChunk_IsShortAndGrowsToItsLength()
    {
        var chunks = new SpilledChunks<byte>(1_000, 1);
        chunks.Begin();
        Assert.InRange(chunks.Last.Length, 1, 100);
        chunks.Last[0] = 7;
        while (chunks.Last.Length < 1_000)
        {
            chunks.Grow();
        }

        Assert.Equal((1_000, 7), (chunks[0].Length, chunks[0][0]));
    }

    [Fact]
    public void Log_OfMoreThanStaysInMemory_HoldsEveryReport()
    {
        const int Count = 1_300_000;
        var log = new ReportLog();
        Span<byte> report = stackalloc byte[32];
        for (var index = 0; index < Count; index++)
        {
            BitConverter.TryWriteBytes(report, index);
            log.Add(8L * index, index % 3, report[..(4 + (index % 29))]);
        }

        var wrong = Enumerable.Range(0, Count).Count(index =>
            log.Tick(index) != 8L * index || log.Endpoint(index) != index % 3 || log.Data(index).Length != 4 + (index % 29) || BitConverter.ToInt32(log.Data(index)) != index);
        Assert.Equal(0, wrong);
    }

    private static void Fill(SpilledChunks<long> chunks, int count)
    {
        for (var index = 0; index < count; index++)
        {
            chunks.Begin();
            while (chunks.Last.Length < Length)
            {
                chunks.Grow();
            }

            for (var value = 0; value < Length; value++)
            {
                chunks.Last[value] = (1_000_000L * index) + value;
            }
        }
    }
}
