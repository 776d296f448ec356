using System.Text;
using Tarry.Rig.Frames;
using Tarry.Rig.Link;
using Tarry.Rig.SimulatedBench;

namespace Tarry.Rig.Tests.SimulatedBench;

public class SimulatedRigTests
{
    [Fact]
    public void Intervals_AreTheDrawsOfTheProtocolPage()
    {
        // xorshift32 from 1: 270369, 67634689, 2647435461 (G. Marsaglia, J. Stat. Softw. 8(14), 2003, shifts 13, 17, 5; computed by hand below).
        var x = 1u;
        var expected = new List<long>();
        for (var i = 0; i < 2000; i++)
        {
            x ^= x << 13;
            x ^= x >> 17;
            x ^= x << 5;
            expected.Add(1_120_000 + (long)((UInt128)x * 800_001 >> 32));
        }

        Assert.Equal(270369u, FirstDraw());
        Assert.Equal(expected.Skip(1), PressIntervals(2000));
    }

    [Fact]
    public void Intervals_AreUniformOverTheWholeRangeAndNeverNarrower()
    {
        var intervals = PressIntervals(20_000);
        Assert.InRange(intervals.Min(), 1_120_000, 1_120_800);
        Assert.InRange(intervals.Max(), 1_919_200, 1_920_000);

        // Chi-squared over 50 bins, 49 degrees of freedom: 0.999 quantile 85.35 (R: qchisq(0.999, 49)).
        var counts = new int[50];
        foreach (var interval in intervals)
        {
            counts[(interval - 1_120_000) * 50 / 800_001]++;
        }

        var mean = intervals.Count / 50.0;
        Assert.InRange(counts.Sum(count => (count - mean) * (count - mean) / mean), 20, 85.35);
    }

    [Fact]
    public void GoldenCommands_AreAnsweredByTheGoldenFrames()
    {
        // A board of boot 6 that resets as its port is opened says the page's own greeting, and answers in its words.
        var options = new SimulatedRigOptions { BootId = 6, Board = "uno", RestartsWhenOpened = true };
        var bench = new SimulatedRigPortSource(new SimulatedDevice(), options);
        using var port = bench.Open();
        var said = new List<string>();
        Hear(2);
        foreach (var command in ProtocolPage.GoldenFromHost)
        {
            port.Write(Encoding.ASCII.GetBytes(command + "\n"));
            Hear(0.05);
        }

        Assert.Equal(ProtocolPage.GoldenFromRig[0], said[0]);
        Assert.Contains(ProtocolPage.GoldenFromRig[7], said);
        string[] kinds = ["B", "B", "A", "A", "A", "A", "A", "A", "K", "N", "A", "D", "A", "A", "A", "A", "A", "A", "A", "A", "V"];
        Assert.Equal(kinds, said.Select(line => line[..1]).Where(kind => kind is not ("P" or "T" or "S")));
        Assert.Contains("N 0007 09 r gone*" + Frames.PlainFrame.Checksum("N 0007 09 r gone"), said);

        void Hear(double seconds)
        {
            var buffer = new byte[100];
            var start = bench.Time.GetTimestamp();
            while (bench.Time.GetElapsedTime(start).TotalSeconds < seconds)
            {
                var count = port.Read(buffer, TimeSpan.FromMilliseconds(10));
                if (count > 0)
                {
                    said.Add(Encoding.ASCII.GetString(buffer, 0, count - 1));
                }
            }
        }
    }

    [Fact]
    public void ResponseSlowerThanTheTimeOut_IsAMissAndItsEdgeCounts()
    {
        var trials = Trials(new SimulatedDevice { FixedDelayMs = 65 }, 20);
        Assert.All(trials, trial => Assert.Equal((null, 1), (trial.LatencyTicks, trial.Edges)));
    }

    [Fact]
    public void ResponseSlowerThanTheTrial_IsAStrayEdgeOfTheNext()
    {
        var trials = Trials(new SimulatedDevice { FixedDelayMs = 72 }, 20);
        Assert.All(trials.Skip(1), trial => Assert.True(trial.Flags.HasFlag(Studies.Trials.TrialFlags.StrayEdgeBefore)));
    }

    [Fact]
    public void HostThatDoesNotAcknowledge_IsWaitedForAtTwentyFour()
    {
        var bench = new SimulatedRigPortSource(new SimulatedDevice { FixedDelayMs = 1 }, new SimulatedRigOptions());
        using var link = Connect(bench);
        link.Ask(HostCommand.Go);
        bench.Pause(TimeSpan.FromSeconds(10), TestContext.Current.CancellationToken);
        var heartbeat = Drain(link).OfType<HeartbeatFrame>().Last();
        Assert.Equal((24u, RigState.WaitingForHost, 24), (heartbeat.LastSequence, heartbeat.State, heartbeat.Unacknowledged));
        link.Acknowledge(24);
        bench.Pause(TimeSpan.FromSeconds(10), TestContext.Current.CancellationToken);
        var next = Drain(link).OfType<TrialFrame>().Where(trial => trial.Sequence > 24).ToList();
        Assert.Equal(24, next.Count);
        Assert.True(next[0].Flags.HasFlag(Studies.Trials.TrialFlags.WaitedForHost));
        Assert.DoesNotContain(next.Skip(1), trial => trial.Flags.HasFlag(Studies.Trials.TrialFlags.WaitedForHost));
    }

    [Fact]
    public void EchoByte_IsTheResponseInEchoModeWhereverItStands()
    {
        var bench = new SimulatedRigPortSource(new SimulatedDevice(), new SimulatedRigOptions());
        var port = bench.Open();
        using var link = new RigLink(port, bench.Time, _ => { });
        link.Greet(TimeSpan.FromSeconds(1), TestContext.Current.CancellationToken);
        link.Ask(HostCommand.Set(RigParameter.ResponseSource, 2));
        link.Ask(HostCommand.Set(RigParameter.Count, 1));
        link.Ask(HostCommand.Go);
        for (var i = 0; i < 30; i++)
        {
            bench.Pause(TimeSpan.FromMilliseconds(10), TestContext.Current.CancellationToken);
            var ping = HostCommand.Ping(1).Encode((byte)(100 + i)).ToList();
            ping.Insert(5, 0x06);
            port.Write([.. ping]);
        }

        bench.Pause(TimeSpan.FromMilliseconds(20), TestContext.Current.CancellationToken);
        var frames = Drain(link);
        Assert.NotNull(Assert.Single(frames.OfType<TrialFrame>()).LatencyTicks);
        Assert.Equal(30, frames.OfType<PingReplyFrame>().Count());
    }

    [Theory]
    [InlineData(7.5)]
    [InlineData(4)]
    [InlineData(1)]
    public void ReportSlots_ArrivalsFallOnTheGrid(double intervalMs)
    {
        var device = new SimulatedDevice { FixedDelayMs = 0.7, ReportIntervalMs = intervalMs, ReportPhaseMs = 0.25 };
        foreach (var trial in Trials(device, 300))
        {
            var arrivalUs = (trial.PressTicks + trial.LatencyTicks!.Value) / 16.0;
            var offGrid = Math.IEEERemainder(arrivalUs - 250, 1000 * intervalMs);
            Assert.InRange(Math.Abs(offGrid), 0, 0.07);
            Assert.InRange(trial.LatencyTicks!.Value / 16.0, 699.9, 700 + (1000 * intervalMs) + 0.1);
        }
    }

    [Fact]
    public void SlotsThatFollowThePress_GiveTheSameWaitEveryTime() =>
        Assert.All(
            Trials(new SimulatedDevice { ReportIntervalMs = 8, ReportPhaseMs = 3, SlotsFollowPress = true }, 50),
            trial => Assert.Equal(48_000u, trial.LatencyTicks));

    [Fact]
    public void Shares_AreAsAsked()
    {
        // Binomial, n = 4,000: five standard deviations about the share.
        var device = new SimulatedDevice { FixedDelayMs = 2, LateProbability = 0.05, LateByMs = 20, MissProbability = 0.03, BounceProbability = 0.1 };
        var trials = Trials(device, 4000);
        Assert.InRange(trials.Count(trial => trial.LatencyTicks is null), 120 - 54, 120 + 54);
        Assert.InRange(trials.Count(trial => trial.LatencyTicks > 320_000), 194 - 68, 194 + 68);
        Assert.InRange(trials.Count(trial => trial.Edges > 1), 388 - 94, 388 + 94);
    }

    [Fact]
    public void Drift_IsAsAsked()
    {
        var device = new SimulatedDevice { FixedDelayMs = 5, WarmUpMs = 2, WarmUpSeconds = 20, DriftStartSeconds = 30, DriftMsPerMinute = 3 };
        var trials = Trials(device, 900);
        var origin = trials[0].PressTicks;
        foreach (var trial in trials)
        {
            var seconds = (trial.PressTicks - origin) / 16e6;
            var expected = 5 + Math.Max(0, 2 - (seconds / 10)) + Math.Max(0, (seconds - 30) / 20);
            Assert.Equal(expected, trial.LatencyTicks!.Value / 16_000.0, 0.001);
        }
    }

    [Fact]
    public void Radio_RetriesStepByTheConnectionInterval()
    {
        var device = new SimulatedDevice { ConnectionIntervalMs = 7.5, RetryProbability = 0.2 };
        var steps = Trials(device, 2000).Where(trial => trial.LatencyTicks is not null).GroupBy(trial => (int)(trial.LatencyTicks!.Value / 120_000.0)).ToDictionary(group => group.Key, group => group.Count());
        Assert.InRange(steps[0], 1600 - 90, 1600 + 90);
        Assert.InRange(steps[1], 320 - 80, 320 + 80);
    }

    private static uint FirstDraw()
    {
        var x = 1u;
        x ^= x << 13;
        x ^= x >> 17;
        return x ^ (x << 5);
    }

    private static List<long> PressIntervals(int trials)
    {
        var pressed = Trials(new SimulatedDevice { FixedDelayMs = 1 }, trials, timeOutUs: 30_000).Select(trial => (long)trial.PressTicks).ToList();
        return [.. pressed.Zip(pressed.Skip(1), (before, after) => after - before)];
    }

    private static List<TrialFrame> Trials(SimulatedDevice device, int count, uint timeOutUs = 60_000)
    {
        var bench = new SimulatedRigPortSource(device, new SimulatedRigOptions());
        using var link = Connect(bench);
        link.Ask(HostCommand.Set(RigParameter.TimeOut, timeOutUs));
        link.Ask(HostCommand.Go);
        var trials = new List<TrialFrame>();
        while (trials.Count < count)
        {
            if (link.Next(TimeSpan.FromSeconds(1)) is TrialFrame trial)
            {
                trials.Add(trial);
                link.Acknowledge(trial.Sequence);
            }
        }

        return trials;
    }

    private static RigLink Connect(SimulatedRigPortSource bench)
    {
        var link = new RigLink(bench.Open(), bench.Time, bad => Assert.Fail(bad.Describe()));
        Assert.NotNull(link.Greet(TimeSpan.FromSeconds(1), TestContext.Current.CancellationToken));
        return link;
    }

    private static List<RigFrame> Drain(RigLink link)
    {
        var frames = new List<RigFrame>();
        while (link.Next(TimeSpan.Zero) is { } frame)
        {
            frames.Add(frame);
        }

        return frames;
    }
}
