using Tarry.Statistics.Circles;

namespace Tarry.Statistics.Tests.Circles;

/// <summary>Values: NumPy/SciPy by generalised eigenproblem and by Newton's search, agreeing to 1e-8 (reference-checks, section 9); the geometric fit of the arc by Newton's search in 40 decimal digits, where that section is 4e-7 off.</summary>
public class CircleFitTests
{
    private const double Tolerance = 1e-7;

    public static TheoryData<string, double[]> Fits => new()
    {
        { "gander", [4.74233129, 3.83512270, 4.10876152, 4.61548152, 2.80735440, 4.91130160, 4.61393269, 2.79520935, 4.87921285, 4.73978242, 2.98353273, 4.71422601, 1.22759908] },
        { "cookbook", [10.55231286, 9.70590006, 23.36241056, 10.55029761, 9.70995421, 23.41541416, 10.55029301, 9.70996344, 23.36257265, 10.50008622, 9.65994951, 23.33352765, 7.71185224] },
        { "arc", [15.05503487, 8.83614996, 20.85072309, 9.58258552, 3.48653582, 27.71749328, 9.57579691, 3.47989888, 27.70220033, 9.88756656748, 3.68749730978, 27.35044316813, 4.04252190] },
        { "twelve", [.09720374, -.04325963, 1.00180650, .09720300, -.04325796, 1.00205907, .09720300, -.04325796, 1.00180651, .09730447, -.04315326, 1.00168019, .00304205] },
    };

    [Theory]
    [MemberData(nameof(Fits))]
    public void Fits_OfPublishedPoints_GiveTheReferenceCircles(string set, double[] expected)
    {
        var (x, y) = Points(set);
        var geometric = GeometricCircle.Fit(x, y);
        Circle[] circles = [AlgebraicCircle.Kasa(x, y), AlgebraicCircle.Pratt(x, y), AlgebraicCircle.Taubin(x, y), geometric];
        double[] found = [.. circles.SelectMany(circle => new[] { circle.X, circle.Y, circle.Radius }), GeometricCircle.Squares(geometric, x, y)];
        Assert.All(expected.Zip(found), pair => Assert.Equal(pair.First, pair.Second, Tolerance));
    }

    [Fact]
    public void Geometric_OfGandersPoints_IsAsPrinted()
    {
        var circle = GeometricCircle.Fit(PublishedCircles.Gander.X, PublishedCircles.Gander.Y);
        Assert.Equal((4.7398, 2.9835, 4.7142), (Math.Round(circle.X, 4), Math.Round(circle.Y, 4), Math.Round(circle.Radius, 4)));
    }

    [Fact]
    public void Geometric_OfShiftedAndScaledPoints_ShiftsAndScales()
    {
        var (x, y) = PublishedCircles.Arc;
        var circle = GeometricCircle.Fit(x, y);
        var moved = GeometricCircle.Fit([.. x.Select(value => 1e6 + (3 * value))], [.. y.Select(value => -2e6 + (3 * value))]);
        Assert.Equal(1e6 + (3 * circle.X), moved.X, 1e-5);
        Assert.Equal(3 * circle.Radius, moved.Radius, 1e-5);
    }

    [Fact]
    public void Fits_OfPointsOnALine_AreRefused() =>
        Assert.Throws<ArgumentException>(() => AlgebraicCircle.Kasa([0, 1, 2], [0, 1, 2]));

    private static (double[] X, double[] Y) Points(string set) => set switch
    {
        "gander" => PublishedCircles.Gander,
        "cookbook" => PublishedCircles.Cookbook,
        "arc" => PublishedCircles.Arc,
        _ => PublishedCircles.Twelve,
    };
}
