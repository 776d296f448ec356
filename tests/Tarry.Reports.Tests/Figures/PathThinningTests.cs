using Tarry.Reports.Figures;

namespace Tarry.Reports.Tests.Figures;

public sealed class PathThinningTests
{
    [Fact]
    public void Of_PointsOnALine_KeepsItsEnds() =>
        Assert.Equal([(0, 0), (10, 5)], PathThinning.Of([(0, 0), (2, 1), (4, 2), (7, 3.5), (10, 5)], 0.01));

    [Fact]
    public void Of_ACorner_KeepsIt() =>
        Assert.Equal([(0, 0), (5, 5), (10, 0)], PathThinning.Of([(0, 0), (2, 2), (5, 5), (8, 2), (10, 0)], 0.01));

    [Fact]
    public void Of_AClosedTrace_KeepsTheFarSide() =>
        Assert.Equal([(0, 0), (10, 0), (10, 1), (0, 0)], PathThinning.Of([(0, 0), (10, 0), (10, 1), (5, 0.5), (0, 0)], 0.1));

    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    [InlineData(2)]
    public void Of_FewPoints_KeepsThemAll(int count) =>
        Assert.Equal(count, PathThinning.Of([.. Enumerable.Repeat((1.0, 1.0), count)], 1).Count);

    [Theory]
    [InlineData(0.02)]
    [InlineData(0.2)]
    public void Of_AWave_StaysWithinTheToleranceAndTakesFewerPoints(double tolerance)
    {
        List<(double X, double Y)> wave = [.. Enumerable.Range(0, 2000).Select(i => (i * 0.01, 3 * Math.Sin(i * 0.01)))];
        var kept = PathThinning.Of(wave, tolerance);
        Assert.InRange(kept.Count, 8, 400);
        Assert.All(wave, point => Assert.InRange(Math.Abs(At(kept, point.X) - point.Y), 0, 4 * tolerance));
    }

    // The height of the line over x: at a slope of up to 3, it is up to sqrt(10) tolerances from the point.
    private static double At(List<(double X, double Y)> line, double x)
    {
        var right = Math.Max(1, line.FindIndex(point => point.X >= x));
        var (from, to) = (line[right - 1], line[right]);
        return from.Y + ((to.Y - from.Y) * (x - from.X) / (to.X - from.X));
    }
}
