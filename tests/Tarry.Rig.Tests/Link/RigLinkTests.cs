using Tarry.Rig.Frames;
using Tarry.Rig.Link;
using Tarry.Rig.SimulatedBench;

namespace Tarry.Rig.Tests.Link;

public class RigLinkTests
{
    private static readonly TimeSpan Second = TimeSpan.FromSeconds(1);
    private readonly SimulatedRigPortSource bench = new(new SimulatedDevice { FixedDelayMs = 1 }, new SimulatedRigOptions());
    private readonly List<string> sent = [];

    [Fact]
    public void Ask_AnswersLost_RepeatsTheSameCommandWithTheSameNumber()
    {
        var lost = 0;
        using var link = Open(body => body.StartsWith("A ", StringComparison.Ordinal) && ++lost <= 5 ? null : body);
        var answer = link.Ask(HostCommand.Set(RigParameter.Hold, 5000));
        Assert.IsType<AckFrame>(answer);
        var commands = sent.Where(body => body.StartsWith("c ", StringComparison.Ordinal)).ToList();
        Assert.Equal(6, commands.Count);
        Assert.Single(commands.Distinct());
        Assert.Equal(5, link.RepeatedCommands);
    }

    [Fact]
    public void Ask_NeverAnswered_GivesUpAfterFiveRepeats()
    {
        using var link = Open(body => body.StartsWith("A ", StringComparison.Ordinal) ? null : body);
        var start = bench.Time.GetTimestamp();
        Assert.Null(link.Ask(HostCommand.Stop));
        Assert.Equal(6, sent.Count(body => body.StartsWith("x ", StringComparison.Ordinal)));
        Assert.Equal(1.5, bench.Time.GetElapsedTime(start).TotalSeconds, 0.01);
        Assert.Equal(LinkState.Alive, link.State);
    }

    [Fact]
    public void Ask_GoWhoseAnswerIsLost_BeginsOneRun()
    {
        var lost = 0;
        using var link = Open(body => body.StartsWith("A ", StringComparison.Ordinal) && body.EndsWith('g') && ++lost <= 3 ? null : body);
        Assert.IsType<AckFrame>(link.Ask(HostCommand.Set(RigParameter.Count, 20)));
        Assert.IsType<AckFrame>(link.Ask(HostCommand.Go));
        var frames = Listen(link, 3);
        Assert.Equal(20u, Assert.Single(frames.OfType<RunEndFrame>()).Total);
        Assert.Equal(20, bench.Injected.Count);
    }

    [Fact]
    public void Ask_ValueOutOfRange_IsRefusedWithItsReason()
    {
        using var link = Open(body => body);
        var refusal = Assert.IsType<RefusalFrame>(link.Ask(HostCommand.Set(RigParameter.Threshold, 255)));
        Assert.Equal(('c', RefusalReason.Range), (refusal.Kind, refusal.Reason));
    }

    [Fact]
    public void Next_TrialsThatCameBeforeAnAnswer_AreKeptInOrder()
    {
        using var link = Open(body => body);
        link.Ask(HostCommand.Go);
        for (var i = 0; i < 20; i++)
        {
            bench.Pause(TimeSpan.FromMilliseconds(90), TestContext.Current.CancellationToken);
            Assert.NotNull(link.Ping());
        }

        var numbers = Listen(link, 0).OfType<TrialFrame>().Select(trial => (int)trial.Sequence).ToList();
        Assert.InRange(numbers.Count, 15, 24);
        Assert.Equal(Enumerable.Range(1, numbers.Count), numbers);
    }

    [Fact]
    public void State_ThreeSecondsWithoutAGoodFrame_IsSilent()
    {
        var silent = false;
        using var link = Open(body => silent ? null : body);
        silent = true;
        Listen(link, 2.9);
        Assert.Equal(LinkState.Alive, link.State);
        Listen(link, 0.2);
        Assert.Equal(LinkState.Silent, link.State);
    }

    [Fact]
    public void State_FifteenSecondsOfCommandsWithoutAnAnswer_IsDeafUntilGreeted()
    {
        using var link = Open(body => body.StartsWith("A ", StringComparison.Ordinal) ? null : body);
        var start = bench.Time.GetTimestamp();
        while (link.State == LinkState.Alive)
        {
            Assert.Null(link.Ask(HostCommand.Stop));
        }

        Assert.Equal(LinkState.Deaf, link.State);
        Assert.InRange(bench.Time.GetElapsedTime(start).TotalSeconds, 15, 16);
        Assert.NotNull(link.Greet(Second, TestContext.Current.CancellationToken));
        Assert.Equal(LinkState.Alive, link.State);
    }

    [Fact]
    public void State_FrameOfAnotherBoot_IsRestartedUntilGreeted()
    {
        var other = false;
        using var link = Open(body => other ? string.Concat(body.AsSpan(0, 2), "00ff", body.AsSpan(6)) : body);
        other = true;
        Assert.DoesNotContain(Listen(link, 2), frame => frame.Boot == 0xff);
        Assert.Equal(LinkState.Restarted, link.State);
        Assert.Equal((ushort)0xff, link.Greet(Second, TestContext.Current.CancellationToken)!.Boot);
        Assert.Equal(LinkState.Alive, link.State);
    }

    [Fact]
    public void Greet_NobodyThere_GivesUpInTime()
    {
        using var link = new RigLink(new TamperingPortSource(bench, _ => null).Open(), bench.Time, _ => { });
        Assert.Null(link.Greet(Second, TestContext.Current.CancellationToken));
        Assert.Equal(1, bench.Time.GetElapsedTime(0).TotalSeconds, 0.01);
    }

    [Fact]
    public void Ping_LateAnswerToAnEarlierPing_IsNotTaken()
    {
        string? late = null;
        using var link = Open(body =>
        {
            if (!body.StartsWith("K ", StringComparison.Ordinal))
            {
                return body;
            }

            (late, var answer) = (body, late);
            return answer;
        });
        Assert.Null(link.Ping());
        Assert.Null(link.Ping());
        Assert.NotNull(late);
    }

    private RigLink Open(Func<string, string?> fromRig)
    {
        var source = new TamperingPortSource(bench, fromRig, body =>
        {
            sent.Add(body);
            return body;
        });
        var link = new RigLink(source.Open(), bench.Time, bad => Assert.Fail(bad.Describe()));
        Assert.NotNull(link.Greet(Second, TestContext.Current.CancellationToken));
        return link;
    }

    private List<RigFrame> Listen(RigLink link, double seconds)
    {
        var frames = new List<RigFrame>();
        var start = bench.Time.GetTimestamp();
        do
        {
            while (link.Next(TimeSpan.Zero) is { } frame)
            {
                frames.Add(frame);
            }

            bench.Pause(TimeSpan.FromMilliseconds(10), TestContext.Current.CancellationToken);
        }
        while (bench.Time.GetElapsedTime(start).TotalSeconds < seconds);
        return frames;
    }
}
