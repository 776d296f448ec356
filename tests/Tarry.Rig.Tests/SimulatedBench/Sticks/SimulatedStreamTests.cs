using Tarry.Rig.Frames;
using Tarry.Rig.Link;
using Tarry.Rig.SimulatedBench;

namespace Tarry.Rig.Tests.SimulatedBench.Sticks;

/// <summary>The stream of the simulated rig, as docs/protocol.md has it.</summary>
public class SimulatedStreamTests
{
    [Fact]
    public void Stream_OnceBegun_RefusesARunAndParametersAndCountsItsReadings()
    {
        var bench = new SimulatedRigPortSource(new SimulatedDevice(), new SimulatedRigOptions());
        using var link = new RigLink(bench.Open(), bench.Time, _ => { });
        Assert.NotNull(link.Greet(TimeSpan.FromSeconds(1), TestContext.Current.CancellationToken));
        Assert.IsType<AckFrame>(link.Ask(HostCommand.Set(RigParameter.ReadingInterval, 2_000)));
        Assert.IsType<AckFrame>(link.Ask(HostCommand.Stream));
        foreach (var command in new[] { HostCommand.Stream, HostCommand.Go, HostCommand.Set(RigParameter.Hold, 1_000) })
        {
            Assert.Equal(RefusalReason.State, Assert.IsType<RefusalFrame>(link.Ask(command)).Reason);
        }

        var level = Assert.IsType<LevelFrame>(link.Ask(HostCommand.Level(0x1234)));
        bench.Pause(TimeSpan.FromSeconds(1.5), TestContext.Current.CancellationToken);
        Assert.IsType<AckFrame>(link.Ask(HostCommand.Stop));
        var said = new List<RigFrame>();
        while (link.Next(TimeSpan.FromMilliseconds(200)) is { } frame)
        {
            said.Add(frame);
        }

        var readings = said.OfType<ReadingsFrame>().ToList();
        var end = Assert.Single(said.OfType<StreamEndFrame>());
        Assert.Equal((uint)readings.Sum(frame => frame.Readings.Count), end.Total);
        Assert.InRange(end.Total, 740u, 800u);
        for (var index = 1; index < readings.Count; index++)
        {
            Assert.Equal(readings[index - 1].First + 6, readings[index].First);
            Assert.Equal(readings[index - 1].Ticks + (6 * 32_000), readings[index].Ticks);
        }

        Assert.Contains(said.OfType<HeartbeatFrame>(), beat => beat.State == RigState.Streaming);
        Assert.Equal(0x1234, level.Level);
        Assert.IsType<AckFrame>(link.Ask(HostCommand.Set(RigParameter.Hold, 1_000)));
    }
}
