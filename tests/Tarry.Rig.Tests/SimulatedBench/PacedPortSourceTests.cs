using System.Diagnostics;
using Tarry.Rig.SimulatedBench;

namespace Tarry.Rig.Tests.SimulatedBench;

public class PacedPortSourceTests
{
    [Fact]
    public void Read_BenchHeldBack_TakesItsTimeAndSaysTheSame()
    {
        var (free, _) = ReadFor(TimeSpan.FromSeconds(3), speed: null);
        var (paced, took) = ReadFor(TimeSpan.FromSeconds(3), speed: 10);
        Assert.Equal(free, paced);

        // Three seconds of the bench at ten times real time; a busy machine may take longer, never less.
        Assert.True(took >= TimeSpan.FromMilliseconds(280), $"took {took}");
    }

    [Fact]
    public void Read_OnceInAHurry_IsHeldBackNoMore()
    {
        using var hurry = new CancellationTokenSource();
        hurry.Cancel();
        var bench = new SimulatedRigPortSource(SimulatedDefault.Device(null), SimulatedDefault.Rig(1));
        var source = new PacedPortSource(bench, 0.001, TimeProvider.System, hurry.Token);
        var watch = Stopwatch.StartNew();
        using var port = source.Open();
        port.Read(new byte[64], TimeSpan.FromSeconds(2));
        Assert.True(watch.Elapsed < TimeSpan.FromSeconds(30), $"took {watch.Elapsed}");
    }

    [Theory]
    [InlineData(0)]
    [InlineData(-1)]
    public void Source_SpeedThatIsNone_IsRefused(double speed) => Assert.Throws<ArgumentOutOfRangeException>(() =>
        new PacedPortSource(new SimulatedRigPortSource(SimulatedDefault.Loop, SimulatedDefault.Rig(1)), speed, TimeProvider.System));

    private static (byte[] Bytes, TimeSpan Took) ReadFor(TimeSpan limit, double? speed)
    {
        var bench = new SimulatedRigPortSource(SimulatedDefault.Device(null), SimulatedDefault.Rig(1));
        var watch = Stopwatch.StartNew();
        using var port = speed is { } given ? new PacedPortSource(bench, given, TimeProvider.System).Open() : bench.Open();
        var bytes = new List<byte>();
        var buffer = new byte[256];
        while (bench.Time.GetElapsedTime(0) < limit)
        {
            bytes.AddRange(buffer[..port.Read(buffer, TimeSpan.FromMilliseconds(100))]);
        }

        return ([.. bytes], watch.Elapsed);
    }
}
