using Tarry.Rig.Runs;
using Tarry.Web.Bench;

namespace Tarry.Web.Tests.Bench;

public class LatencyShapeTests
{
    [Fact]
    public void Of_NothingCounted_IsNull() => Assert.Null(LatencyShape.Of([], [(5, 1)]));

    [Fact]
    public void Of_EvenLatencies_CountsEveryOneAndSharesAddToOne()
    {
        var counts = new LatencyCounts();
        for (var index = 0; index < 1000; index++)
        {
            counts.Add(5 + (index / 250.0));
        }

        var shape = LatencyShape.Of(counts.InOrder(), [])!;
        Assert.Equal(1000, shape.Count);
        Assert.Equal(1, shape.Shares.Sum() + ((shape.Sooner + shape.Later) / 1000.0), 9);
        Assert.InRange(shape.FromMs, 0, 5);
        Assert.InRange(shape.ToMs, 9, 12);
        Assert.InRange(shape.Shares.Count, 10, 92);

        // 4 ms of even latencies: a class of w ms in their midst holds w / 4 of them.
        Assert.Equal(shape.ClassMs / 4, shape.Shares[(int)((7 - shape.FromMs) / shape.ClassMs)], 2);
    }

    [Fact]
    public void Of_OneVeryLate_DoesNotStretchTheAxisAndIsCounted()
    {
        var counts = new LatencyCounts();
        for (var index = 0; index < 999; index++)
        {
            counts.Add(6 + (index % 20 / 10.0));
        }

        counts.Add(4321.05);
        var shape = LatencyShape.Of(counts.InOrder(), [])!;
        Assert.Equal(1, shape.Later);
        Assert.True(shape.ToMs < 20);
        Assert.Equal(4321.0, shape.LatestMs, 6);
    }

    [Fact]
    public void Of_Reference_IsScaledToTheSameShare()
    {
        var counts = new LatencyCounts();
        for (var index = 0; index < 100; index++)
        {
            counts.Add(10 + (index / 50.0));
        }

        // Ten times as many trials, even from 4 to 6 ms: half of them a millisecond, so each class holds half its width.
        IReadOnlyList<(long Step, long Count)> even = [.. Enumerable.Range(40, 20).Select(step => ((long)step, 50L))];
        var shape = LatencyShape.Of(counts.InOrder(), even)!;
        Assert.True(shape.FromMs <= 4 && shape.ToMs >= 12);
        Assert.Equal(1, shape.ReferenceShares!.Sum(), 6);
        Assert.Equal(shape.ClassMs / 2, shape.ReferenceShares![(int)((5 - shape.FromMs) / shape.ClassMs)], 2);
    }
}
