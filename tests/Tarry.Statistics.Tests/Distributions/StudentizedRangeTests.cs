using Tarry.Statistics.Distributions;

namespace Tarry.Statistics.Tests.Distributions;

public sealed class StudentizedRangeTests
{
    // SciPy 1.10.1, scipy/stats/tests/data/studentized_range_mpmath_ref.json, cdf_data: high-precision mpmath integrals.
    [Theory]
    [InlineData(0.1, 3, 3, 0.0027502772229359594)]
    [InlineData(1, 3, 3, 0.22331624289542043)]
    [InlineData(1, 10, 3, 0.003971273224673166)]
    [InlineData(1, 20, 50, 1.5682573722040226e-07)]
    [InlineData(4, 3, 3, 0.8711786295203324)]
    [InlineData(4, 10, 10, 0.7573606942645745)]
    [InlineData(4, 20, 20, 0.5970517763141937)]
    [InlineData(4, 20, 100, 0.6466699776044968)]
    [InlineData(10, 3, 3, 0.9881335633712994)]
    [InlineData(10, 10, 50, 0.9999997977351971)]
    [InlineData(10, 20, 3, 0.9312318042339768)]
    [InlineData(10, 20, 120, 0.9999999792458618)]
    public void Cdf_MpmathIntegrals_AgreesToTenDigits(double q, int groups, double degrees, double expected) =>
        Close.Absolute(expected, StudentizedRange.Cdf(q, groups, degrees), 1e-10);

    // Two groups: the range is sqrt 2 times |t|, so Q = sqrt 2 t at 1 - a/2. An identity, no table needed.
    [Theory]
    [InlineData(0.95, 1)]
    [InlineData(0.95, 1.5)]
    [InlineData(0.95, 7.3)]
    [InlineData(0.99, 41)]
    [InlineData(0.90, 72)]
    [InlineData(0.95, 100_000)]
    [InlineData(0.95, double.PositiveInfinity)]
    public void Quantile_TwoGroups_IsTheStudentQuantileTimesRootTwo(double p, double degrees) =>
        Close.Relative(Math.Sqrt(2) * StudentDistribution.Quantile(0.5 + (p / 2), degrees), StudentizedRange.Quantile(p, 2, degrees), 1e-7);

    private static readonly double[] Ranges = [3.5, 5, 12];

    private static readonly int[] Groups = [2, 5, 24, 80];

    // Below some 20 degrees of freedom R's ptukey itself is off by up to 1e-4, as its two-group case against pt shows;
    // at low probabilities of many groups it returns 0.
    [Fact]
    public void Cdf_ManyGroups_AgreesWithR() =>
        Agree(OutsideProgram.R("for (d in c(24,72,1000,Inf)) for (g in c(2,5,24,80)) p(ptukey(c(3.5,5,12), g, d))"), [24, 72, 1000, double.PositiveInfinity], 1e-6);

    [Fact]
    public void Cdf_FewDegrees_AgreesWithSciPy() =>
        Agree(OutsideProgram.SciPy("p([stats.studentized_range.cdf(q, g, d) for d in (1, 1.5, 2.5, 6) for g in (2,5,24,80) for q in (3.5,5,12)])"), [1, 1.5, 2.5, 6], 1e-8);

    private static void Agree(double[] expected, double[] degrees, double tolerance)
    {
        var i = 0;
        foreach (var degree in degrees)
        {
            foreach (var group in Groups)
            {
                foreach (var range in Ranges)
                {
                    Close.Absolute(expected[i++], StudentizedRange.Cdf(range, group, degree), tolerance);
                }
            }
        }
    }

    // R's qtukey stops its search at 1e-4 (its help page); SciPy's root finder goes further.
    [Fact]
    public void Quantile_RankingSizes_AgreesWithSciPy()
    {
        var expected = OutsideProgram.SciPy("p([stats.studentized_range.ppf(.95, k, v) for k, v in ((3, 6), (12, 36), (24, 75))])");
        Close.Absolute(expected[0], StudentizedRange.Quantile(0.95, 3, 6), 1e-6);
        Close.Absolute(expected[1], StudentizedRange.Quantile(0.95, 12, 36), 1e-6);
        Close.Absolute(expected[2], StudentizedRange.Quantile(0.95, 24, 75), 1e-6);
    }

    [Fact]
    public void Quantile_RankingSizes_AgreesWithR()
    {
        var expected = OutsideProgram.R("p(qtukey(c(.5,.9,.95,.99), 24, 75), qtukey(.95, 10, Inf))");
        double[] levels = [0.5, 0.9, 0.95, 0.99];
        for (var i = 0; i < levels.Length; i++)
        {
            Close.Absolute(expected[i], StudentizedRange.Quantile(levels[i], 24, 75), 1e-4);
        }

        Close.Absolute(expected[4], StudentizedRange.Quantile(0.95, 10, double.PositiveInfinity), 1e-4);
    }

    [Fact]
    public void Quantile_OneGroup_SaysThatARangeComparesTwo() =>
        Assert.Contains("two conditions", Assert.Throws<ArgumentOutOfRangeException>(() => StudentizedRange.Quantile(0.95, 1, 5)).Message, StringComparison.Ordinal);
}
