using Tarry.Rig.SimulatedBench.Sticks;
using Tarry.Rig.Sticks;
using Tarry.Studies.Sessions;
using Tarry.Studies.Sticks;

namespace Tarry.Rig.Tests.Sticks;

public class StickAcceptanceTests
{
    public static TheoryData<StickProcedure> Procedures => [.. Enum.GetValues<StickProcedure>()];

    [Theory]
    [MemberData(nameof(Procedures))]
    public void Recording_MadeAsTheGuideSays_LacksNothing(StickProcedure procedure) =>
        Assert.Empty(StickAcceptance.Lacks(Session(procedure, SimulatedStickRecording.Of(new SimulatedStick { NoiseSd = 0.002, ReturnSd = 0.01, OffsetX = 0.02 }, procedure, 1))));

    [Theory]
    [InlineData(StickProcedure.Rest, StickProcedure.RimSweep, "it was touched")]
    [InlineData(StickProcedure.FlickRelease, StickProcedure.Rest, "0 releases were found")]
    [InlineData(StickProcedure.RimSweep, StickProcedure.FlickRelease, "beyond half of the way out")]
    [InlineData(StickProcedure.SlowRamp, StickProcedure.Rest, "spans 0 % of its range")]
    [InlineData(StickProcedure.SlowRamp, StickProcedure.RimSweep, "the other axis moved over 100 %")]
    public void Recording_OfSomethingElse_IsToldWhatItLacks(StickProcedure said, StickProcedure done, string lack) =>
        Assert.Contains(StickAcceptance.Lacks(Session(said, SimulatedStickRecording.Of(new SimulatedStick(), done, 1))), text => text.Contains(lack, StringComparison.Ordinal));

    [Fact]
    public void Recording_OfOneTurnOnly_LacksTheOther()
    {
        var whole = SimulatedStickRecording.Of(new SimulatedStick(), StickProcedure.RimSweep, 1);
        var half = Enumerable.Range(0, whole.Count).TakeWhile(index => whole.Ticks[index] < 33_000_000).Count();

        var lack = Assert.Single(StickAcceptance.Lacks(Session(StickProcedure.RimSweep, new StickSamples([.. whole.Ticks[..half]], [.. whole.X[..half]], [.. whole.Y[..half]]))));

        Assert.Equal("turning clockwise, 36 of 36 sectors of ten degrees have fewer than 5 positions", lack);
    }

    [Fact]
    public void Recording_TooShort_IsToldHowShort()
    {
        var samples = SimulatedStickRecording.Of(new SimulatedStick { ReportIntervalMs = 8 }, StickProcedure.Rest, 1, pace: 10);

        Assert.Equal(["it lasts 6.0 s, less than 10 s"], StickAcceptance.Lacks(Session(StickProcedure.Rest, samples)));
    }

    private static StickSession Session(StickProcedure procedure, StickSamples samples) => new(
        new SessionRecord
        {
            Key = new SessionKey("monday", "quill-stick", procedure),
            Segments = [new Segment(null, 1, SimulatedStickRecording.TickHz, null)],
            Stick = SimulatedStickRecording.Setup(new SimulatedStick(), procedure),
        },
        samples);
}
