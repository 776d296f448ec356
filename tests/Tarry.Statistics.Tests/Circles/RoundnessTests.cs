using Tarry.Metrology;
using Tarry.Statistics.Circles;

namespace Tarry.Statistics.Tests.Circles;

/// <summary>The four reference circles of ISO 12181-1. Values: linear programmes and multi-start simplex in SciPy, agreeing (reference-checks, section 9).</summary>
public class RoundnessTests
{
    private const double Tolerance = 1.1e-8;
    private static readonly double[] X = PublishedCircles.Twelve.X;
    private static readonly double[] Y = PublishedCircles.Twelve.Y;

    [Fact]
    public void LeastSquares_OfTheTwelve_Deviates() =>
        Assert.Equal(.04732004, Roundness.About(GeometricCircle.Fit(X, Y), X, Y).Deviation, Tolerance);

    [Fact]
    public void MinimumZone_OfTheTwelve_IsTheReference()
    {
        var circle = MinimumZone.Fit(X, Y);
        Assert.Equal(.09664988, circle.X, Tolerance);
        Assert.Equal(-.04423593, circle.Y, Tolerance);
        Assert.Equal(.04666622, Roundness.About(circle, X, Y).Deviation, Tolerance);
    }

    [Fact]
    public void MinimumCircumscribed_OfTheTwelve_IsTheReference()
    {
        var circle = MinimumCircumscribed.Fit(X, Y);
        Assert.Equal(.09424271, circle.X, Tolerance);
        Assert.Equal(-.04424271, circle.Y, Tolerance);
        Assert.Equal(1.02213757, circle.Radius, Tolerance);
        Assert.Equal(.04787785, Roundness.About(circle, X, Y).Deviation, Tolerance);
    }

    [Fact]
    public void MaximumInscribed_OfTheTwelve_IsTheReference()
    {
        var circle = MaximumInscribed.Fit(X, Y);
        Assert.Equal(.09996599, circle.X, Tolerance);
        Assert.Equal(-.03845279, circle.Y, Tolerance);
        Assert.Equal(.98003401, circle.Radius, Tolerance);
        Assert.Equal(.04996550, Roundness.About(circle, X, Y).Deviation, Tolerance);
    }

    [Fact]
    public void Circles_OfTheCookbookPoints_AreTheReference()
    {
        var (x, y) = PublishedCircles.Cookbook;
        Assert.Equal(3.12646490, Roundness.About(GeometricCircle.Fit(x, y), x, y).Deviation, Tolerance);
        var zone = MinimumZone.Fit(x, y);
        Assert.Equal((10.25363276, 9.27476882), (Math.Round(zone.X, 8), Math.Round(zone.Y, 8)));
        Assert.Equal(2.92459179, Roundness.About(zone, x, y).Deviation, Tolerance);
        var around = MinimumCircumscribed.Fit(x, y);
        Assert.Equal((10.84076433, 9.91082803), (Math.Round(around.X, 8), Math.Round(around.Y, 8)));
        Assert.Equal(24.15940024, around.Radius, Tolerance);
    }

    [Fact]
    public void Zones_OfRandomProfiles_AreNoWiderThanAnyOtherCircles()
    {
        var random = new SeededGenerator(3);
        for (var round = 0; round < 50; round++)
        {
            var (x, y) = Profile(random, 72);
            var zone = Roundness.About(MinimumZone.Fit(x, y), x, y).Deviation;
            Circle[] others = [GeometricCircle.Fit(x, y), MinimumCircumscribed.Fit(x, y), MaximumInscribed.Fit(x, y)];
            Assert.All(others, circle => Assert.True(zone <= Roundness.About(circle, x, y).Deviation + 1e-12));
            Assert.All(x.Zip(y), point => Assert.True(others[1].DeviationOf(point.First, point.Second) <= 1e-10));
            Assert.All(x.Zip(y), point => Assert.True(others[2].DeviationOf(point.First, point.Second) >= -1e-10));
        }
    }

    [Fact]
    public void MinimumZone_OfRandomProfiles_AgreesWithSciPy()
    {
        var (x, y) = Profile(new SeededGenerator(4), 24);
        var expected = OutsideProgram.SciPy(
            "from scipy import optimize\nX, Y = x[:24], x[24:]\ng = lambda p: np.ptp(np.hypot(X - p[0], Y - p[1]))\n"
            + "best = min((optimize.minimize(g, [a, b], method='Nelder-Mead', options=dict(xatol=1e-12, fatol=1e-13, maxiter=5000)) for a in (-.02, 0, .02) for b in (-.02, 0, .02)), key=lambda r: r.fun)\np([best.fun])",
            [.. x, .. y]);
        Assert.Equal(expected[0], Roundness.About(MinimumZone.Fit(x, y), x, y).Deviation, 1e-6);
    }

    private static (double[] X, double[] Y) Profile(SeededGenerator random, int count)
    {
        double[] radii = [.. Enumerable.Range(0, count).Select(_ => 1 + (0.02 * random.NextNormal()))];
        return (
            [.. radii.Select((radius, index) => radius * Math.Cos(2 * Math.PI * index / count))],
            [.. radii.Select((radius, index) => radius * Math.Sin(2 * Math.PI * index / count))]);
    }
}
