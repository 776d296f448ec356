using Tarry.Rig.Runs;
using Tarry.Rig.Sticks;
using Tarry.Rig.Sticks.Recording;
using Tarry.Studies.Sticks;

namespace Tarry.Rig.Tests.Sticks;

public class StickGuideTests
{
    [Fact]
    public void Prompts_OfASubstitution_AskOneThingForItsWholeTime()
    {
        var prompt = Assert.Single(StickGuide.Of(StickProcedure.Substitution).Prompts);
        // 33 levels up and down and 20 jumps, half a second each.
        Assert.Equal((0, 43), (prompt.Starts, prompt.Seconds));
    }

    [Fact]
    public void Prompts_OfARimSweep_FollowEachOtherWithoutAGap()
    {
        var prompts = StickGuide.Of(StickProcedure.RimSweep).Prompts;
        Assert.Equal([0.0, 3, 33, 36], prompts.Select(prompt => prompt.Starts));
        Assert.Equal("turn counter-clockwise along the gate, one turn in 6 s", prompts[1].Text);
        Assert.Equal("turn clockwise along the gate, one turn in 6 s", prompts[3].Text);
    }

    [Fact]
    public void Lasting_TwiceAsLong_StretchesEveryStepAndSaysItsOwnPace()
    {
        var slow = StickGuide.Of(StickProcedure.RimSweep).Lasting(132);
        Assert.Equal([6.0, 60, 6, 60], slow.Steps.Select(step => step.Seconds));
        Assert.Contains("one turn in 12 s", slow.Prompts[1].Text, StringComparison.Ordinal);
        Assert.Equal(66, StickGuide.Of(StickProcedure.RimSweep).Seconds);
    }

    [Theory]
    [InlineData(16.4)]
    [InlineData(661)]
    [InlineData(double.NaN)]
    public void Lasting_OutOfRange_IsRefusedWithTheRange(double seconds)
    {
        var refusal = Assert.Throws<RunSettingsException>(() => StickGuide.Of(StickProcedure.RimSweep).Lasting(seconds));
        Assert.Contains("17 to 660 s", refusal.Message, StringComparison.Ordinal);
    }

    // In turns of 6 s from second 3 on: at 3 the first begins, at 33 the last is over.
    [Theory]
    [InlineData(-2.5, 0, 2.5, null)]
    [InlineData(0.0, 1, 3, null)]
    [InlineData(3.0, 2, 30, "turn 1 of 5")]
    [InlineData(14.9, 2, 18.1, "turn 2 of 5")]
    [InlineData(15.0, 2, 18, "turn 3 of 5")]
    [InlineData(32.99, 2, 0.01, "turn 5 of 5")]
    [InlineData(66.2, 4, 0, "turn 5 of 5")]
    public void Progress_AtAnInstant_SaysTheStepItsRestAndItsRepeat(double seconds, int number, double left, string? repeat)
    {
        var progress = new StickProgress(StickGuide.Of(StickProcedure.RimSweep).Prompts, seconds, 0, 0, 0);
        Assert.Equal((number, repeat), (progress.Number, progress.Repeat));
        Assert.Equal(left, progress.SecondsLeft, 1e-9);
        Assert.InRange(progress.Done, 0, 1);
    }

    [Fact]
    public void Progress_OfTheLastStep_HasNothingThen()
    {
        var prompts = StickGuide.Of(StickProcedure.RimSweep).Prompts;
        Assert.Equal("stop, and stay at the gate", new StickProgress(prompts, 20, 0, 0, 0).Next!.Asked);
        Assert.Null(new StickProgress(prompts, 40, 0, 0, 0).Next);
        Assert.Equal(1, new StickProgress(prompts, 66, 0, 0, 0).Done);
    }
}
