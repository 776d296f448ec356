using Tarry.Findings.Sticks;
using Tarry.Findings.Sticks.Flicks;
using Tarry.Findings.Sticks.Measures;
using Tarry.Findings.Sticks.Stops;
using Tarry.Studies.Sticks;

namespace Tarry.Findings.Tests.Sticks;

/// <summary>What is told by direction: errors at stops, places of rest after release.</summary>
public class DirectionTests
{
    // Student's 0.975 quantile with 2 degrees of freedom, 4.3027, of any printed table; values 1, 2, 3 have a standard deviation of 1.
    private static readonly double Half = 4.302653 / Math.Sqrt(3);

    [Fact]
    public void StopErrors_OfSeveralSessions_AreOverSessions()
    {
        var stop = Assert.Single(StopErrors.Of([Visits(350, 1, 1), Visits(350, 2, 2), Visits(350, 3, 3, 3)]));
        Assert.Equal((2, 3, 7), (stop.Error, stop.Sessions, stop.Visits));
        Assert.Equal(Half, stop.HalfWidth!.Value, 5);
        Assert.Equal(352, stop.Said, 9);
    }

    [Fact]
    public void StopErrors_OfOneSession_AreOverVisitsWithTheStopsUncertainty()
    {
        var stop = Assert.Single(StopErrors.Of([Visits(359, 1, 2, 3) with { Uncertainty = 0.5 }]));
        // The normal 0.975 quantile is 1.959964.
        Assert.Equal(Math.Sqrt((Half * Half) + (1.959964 * 1.959964 * 0.25)), stop.HalfWidth!.Value, 5);
        Assert.Equal(1, stop.Said, 9);
    }

    [Fact]
    public void StopErrors_OfOneVisit_HaveNoInterval() => Assert.Null(Assert.Single(StopErrors.Of([Visits(0, 1)])).HalfWidth);

    [Fact]
    public void StopErrors_OfDifferentJigs_AreByAngle() =>
        Assert.Equal([(0, 2), (45, 1)], StopErrors.Of([Visits(45, 1, 1), Visits(0, 1, 1), Visits(0, 2, 2)]).Select(stop => ((int)stop.Degrees, stop.Sessions)));

    [Fact]
    public void ReturnDirections_KeepEveryReleaseAndAreOverSessions()
    {
        static Release From(double degrees, double x) => new(Math.Cos(degrees * Math.PI / 180), Math.Sin(degrees * Math.PI / 180), x, -x, 0, 0, 0, 0, 0);
        var directions = ReturnDirections.Of([[From(3, 1), From(-4, 1)], [From(1, 2), From(130, 7)], [From(0, 3)]]);
        Assert.Equal([(0, 3, 4), (135, 1, 1)], directions.Select(direction => ((int)direction.Degrees, direction.Sessions, direction.Releases)));
        Assert.Equal((2, -2), (directions[0].X, directions[0].Y));
        Assert.Equal(Half, directions[0].HalfWidthX!.Value, 5);
        Assert.Equal([(1, -1), (1, -1), (2, -2), (3, -3)], directions[0].Rests);
        Assert.Null(directions[1].HalfWidthX);
    }

    [Fact]
    public void AngularError_OfAStickWithPlayVisitedThereAndBack_IsThatOfItsWorstStop()
    {
        // x is said 3 too much: at 90 degrees the direction is atan(90 / 3), 1.909 degrees short of it; play turns each round the other way.
        var finding = Finding([.. Enumerable.Range(1, 3).Select(sitting => (new FaultyStick { OffsetX = 3, Hysteresis = 3 }).Stops((ulong)sitting, rounds: 2, thereAndBack: true, sitting: $"s{sitting}"))]);
        Assert.InRange(finding.Estimate(StickMeasure.AngularError)!.Value, 1.7, 2.1);
    }

    [Fact]
    public void Steps_OfAnAxis_AreInPerCentOfHalfTheRange()
    {
        // 201 positions from -100 to 100 %.
        var finding = Finding((new FaultyStick { Steps = 201 }).Rim(1));
        Assert.Equal((1, 1), (Math.Round(finding.StepX!.Value, 2), Math.Round(finding.StepY!.Value, 2)));
    }

    private static SessionStops Visits(double degrees, params double[] errors) => new([(degrees, errors)], 0);

    private static StickFinding Finding(params StickSession[] sessions) =>
        StickFindings.Of([new() { Id = "pad", Factors = new Dictionary<string, string>() }], sessions)!.Conditions.Single();
}
