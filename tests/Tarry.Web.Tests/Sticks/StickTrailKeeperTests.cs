using Tarry.Rig.Sticks;
using Tarry.Rig.Sticks.Recording;
using Tarry.Studies.Sticks;
using Tarry.Web.Sticks;

namespace Tarry.Web.Tests.Sticks;

public class StickTrailKeeperTests
{
    private static readonly IReadOnlyList<StickPrompt> Prompts = StickGuide.Of(StickProcedure.Rest).Prompts;

    [Fact]
    public void Now_BeforeTheFirstPosition_IsNothing() => Assert.Null(new StickTrailKeeper().Now());

    [Fact]
    public void Now_OfALongRecording_HoldsTheLastThreeSecondsThinnedAndTheNewestLast()
    {
        var keeper = new StickTrailKeeper();
        for (var millisecond = 0; millisecond <= 10_000; millisecond += 5)
        {
            keeper.Add(new StickProgress(Prompts, millisecond / 1_000.0, millisecond, millisecond / 10_000.0, -0.5));
        }

        var trail = keeper.Now()!;
        // 601 positions in 3 s: every third is within 250.
        Assert.Equal((3, 201, (1.0, -0.5)), (trail.Seconds, trail.Positions.Count, trail.Newest));
        Assert.Equal((70, 100), (trail.SpanX.Least, trail.SpanX.Greatest));
        Assert.Equal((-50, -50), (trail.SpanY.Least, trail.SpanY.Greatest));
        Assert.Equal(trail.Positions.Order(), trail.Positions);
        Assert.Equal("The last 3 s: x from 70 to 100, y from \u221250 to \u221250 % of half the range.", StickRunWording.Trail(trail));
    }

    [Fact]
    public void Now_OfReadingsFurtherApart_HoldsTheNewest()
    {
        var keeper = new StickTrailKeeper();
        keeper.Add(new StickProgress(Prompts, 1, 1, 0.1, 0.1));
        keeper.Add(new StickProgress(Prompts, 7, 2, 0.2, 0.2));
        Assert.Equal([(0.2, 0.2)], keeper.Now()!.Positions);
    }
}
