using Tarry.Statistics.Distributions;

namespace Tarry.Statistics.Tests.Distributions;

public class NoncentralStudentDistributionTests
{
    // mpmath 1.2.1, quadrature; SciPy 1.10.1 nct.cdf agrees to 1e-13.
    [Theory]
    [InlineData(2, 10, 1, 0.80761156253038)]
    [InlineData(0, 5, 2, 0.02275013194818)]
    [InlineData(3, 30, 2.5, 0.67092213728183)]
    [InlineData(-1, 8, 0.5, 0.0767230931113)]
    [InlineData(12, 20, 10, 0.80553429857765)]
    [InlineData(5.87883240546, 9, 3, 0.95)]
    public void Cdf_PublishedPoints_Agrees(double t, double degreesOfFreedom, double noncentrality, double expected)
    {
        Close.Absolute(expected, NoncentralStudentDistribution.Cdf(t, degreesOfFreedom, noncentrality), 2e-11);
        Close.Absolute(1 - expected, NoncentralStudentDistribution.UpperTail(t, degreesOfFreedom, noncentrality), 2e-11);
    }

    [Theory]
    [InlineData(1)]
    [InlineData(2.5)]
    [InlineData(40)]
    [InlineData(5000)]
    public void Cdf_NoNoncentrality_IsStudents(double degreesOfFreedom)
    {
        foreach (var t in new[] { -3, -0.5, 0, 1, 4.0 })
        {
            Close.Absolute(StudentDistribution.Cdf(t, degreesOfFreedom), NoncentralStudentDistribution.Cdf(t, degreesOfFreedom, 0), 1e-11);
        }
    }

    // R 4.2.2 qchisq.
    [Fact]
    public void ChiSquaredQuantile_LiveAgainstR_Agrees()
    {
        var expected = OutsideProgram.R("for (df in c(1, 3, 8, 72, 500)) p(qchisq(c(.01, .2, .8, .975), df))");
        var at = 0;
        foreach (var df in new[] { 1, 3, 8, 72, 500 })
        {
            foreach (var share in new[] { 0.01, 0.2, 0.8, 0.975 })
            {
                Close.Relative(expected[at++], ChiSquaredDistribution.Quantile(share, df), 1e-9);
            }
        }
    }
}
