using Tarry.Metrology;
using Tarry.Statistics.Circles;

namespace Tarry.Statistics.Tests.Circles;

public class EllipseTests
{
    [Fact]
    public void AxesEllipse_OfSkewedAxes_FindsWhatWasPutIn()
    {
        // The model of the remarks, written out.
        double[] turn = [.. Enumerable.Range(0, 72).Select(index => index * Math.PI / 36)];
        double[] x = [.. turn.Select(t => 120 + (900 * Math.Cos(t)))];
        double[] y = [.. turn.Select(t => -40 + (870 * Math.Sin(t + 0.03)))];
        var ellipse = AxesEllipse.Fit(x, y)!.Value;
        Assert.Equal(120, ellipse.X, 1e-7);
        Assert.Equal(-40, ellipse.Y, 1e-7);
        Assert.Equal(900, ellipse.ReachX, 1e-7);
        Assert.Equal(870, ellipse.ReachY, 1e-7);
        Assert.Equal(0.03, ellipse.Skew, 1e-10);
    }

    [Fact]
    public void AxesEllipse_OfPointsOnALine_IsNone() =>
        Assert.Null(AxesEllipse.Fit([0, 1, 2, 3, 4, 5, 6], [0, 1, 2, 3, 4, 5, 6]));

    [Fact]
    public void CloudEllipse_OfACorrelatedCloud_AgreesWithNumPy()
    {
        var random = new SeededGenerator(2);
        double[] x = [.. Enumerable.Range(0, 400).Select(_ => random.NextNormal())];
        double[] y = [.. x.Select(value => (0.5 * value) + random.NextNormal())];
        var expected = OutsideProgram.SciPy(
            "w, v = np.linalg.eigh(np.cov(x[:400], x[400:]))\nr = np.sqrt(stats.chi2.ppf(.95, 2) * w)\np([r[1], r[0], np.arctan2(v[1, 1], v[0, 1]) % np.pi])",
            [.. x, .. y]);
        var cloud = CloudEllipse.Of(x, y);
        Assert.Equal(expected[0], cloud.SemiMajor, 1e-10);
        Assert.Equal(expected[1], cloud.SemiMinor, 1e-10);
        Assert.Equal(expected[2], cloud.Angle, 1e-10);
    }
}
