using Tarry.Statistics.Distributions;

namespace Tarry.Statistics.Tests.Distributions;

public sealed class DistributionTests
{
    // R 4.2.2, qt(.975, df); qt(.995, 16).
    [Theory]
    [InlineData(0.975, 1, 12.70620473617)]
    [InlineData(0.975, 5, 2.570581835636)]
    [InlineData(0.975, 9, 2.262157162798)]
    [InlineData(0.975, 30, 2.042272456301)]
    [InlineData(0.975, 17.7764735162, 2.10281724157)]
    [InlineData(0.995, 16, 2.920781622425)]
    [InlineData(0.975, 0.05, 1.195833758547491e+25)]
    [InlineData(0.9999, 1e6, 3.719030274762571)]
    [InlineData(0.975, 1e9, 1.959963986912325)]
    [InlineData(0.9999, 1e9, 3.719016499244969)]
    [InlineData(0.975, 1e12, 1.959963984542426)]
    [InlineData(0.975, double.PositiveInfinity, 1.959963984540054)]
    public void StudentQuantile_ReferenceDegrees_AgreesWithR(double p, double degrees, double expected) =>
        Close.Relative(expected, StudentDistribution.Quantile(p, degrees), degrees < 1 ? 1e-8 : 1e-11);

    [Fact]
    public void StudentTail_WhereTheMethodsMeet_IsContinuous() =>
        Close.Relative(StudentDistribution.UpperTail(3, 1e7), StudentDistribution.UpperTail(3, 1e7 + 1), 1e-9);

    // NIST Technical Note 1297, Table B.1: 16 degrees of freedom.
    [Theory]
    [InlineData(0.95, 2.12)]
    [InlineData(0.9545, 2.17)]
    [InlineData(0.99, 2.92)]
    public void StudentQuantile_NistTable_AgreesAsPrinted(double level, double expected) =>
        Assert.Equal(expected, Math.Round(StudentDistribution.Quantile(0.5 + (level / 2), 16), 2));

    // df 1 is the Cauchy distribution: F(t) = 1/2 + atan(t)/pi.
    [Theory]
    [InlineData(1e-6)]
    [InlineData(0.4)]
    [InlineData(0.999999)]
    public void StudentQuantile_OneDegree_IsTheCauchyQuantile(double p) =>
        Close.Relative(Math.Tan(Math.PI * (p - 0.5)), StudentDistribution.Quantile(p, 1), 1e-9);

    // R: pchisq at the quantiles qchisq(.025, 19) and qchisq(.975, 19).
    [Fact]
    public void ChiSquared_ReferenceQuantiles_GiveTheirLevels()
    {
        Close.Absolute(0.025, ChiSquaredDistribution.Cdf(8.906516481988, 19), 1e-12);
        Close.Absolute(0.025, ChiSquaredDistribution.UpperTail(32.85232686173, 19), 1e-12);
    }

    // R: qf(.95, 9, 90), qf(.95, 5, 24).
    [Theory]
    [InlineData(1.985594963731, 9, 90)]
    [InlineData(2.620654147863, 5, 24)]
    public void Fisher_ReferenceQuantiles_GiveTheirLevels(double ratio, double numerator, double denominator)
    {
        Close.Absolute(0.05, FisherDistribution.UpperTail(ratio, numerator, denominator), 1e-12);
        Close.Absolute(0.95, FisherDistribution.Cdf(ratio, numerator, denominator), 1e-12);
    }

    // mpmath 1.2.1.
    [Fact]
    public void NormalCdf_FarTail_KeepsItsDigits() =>
        Close.Relative(6.220960574272e-16, NormalDistribution.Cdf(-8), 1e-12);

    // Exact: a polynomial with rational coefficients.
    [Fact]
    public void BetaCdf_WholeParameters_IsThePolynomial() => Close.Relative(0.579825, BetaDistribution.Cdf(0.3, 2, 5), 1e-13);

    // mpmath: P(3, 2.5), the regularised lower gamma function = chi-squared cdf of 5 on 6.
    [Fact]
    public void ChiSquaredCdf_AsGamma_AgreesWithMpmath() => Close.Relative(0.456186884116670, ChiSquaredDistribution.Cdf(5, 6), 1e-13);

    // Series: 2 sum (-1)^(k-1) exp(-2 k^2 x^2), summed apart.
    [Theory]
    [InlineData(1.0, 0.269999671677)]
    [InlineData(1.36, 0.0494858767554)]
    public void Kolmogorov_ReferencePoints_AgreeWithTheSeries(double x, double expected) =>
        Close.Absolute(expected, KolmogorovDistribution.UpperTail(x), 1e-12);

    [Fact]
    public void Kolmogorov_WhereTheSeriesMeet_IsContinuous() =>
        Close.Absolute(KolmogorovDistribution.UpperTail(0.5), KolmogorovDistribution.UpperTail(0.5 - 1e-13), 1e-10);

    // R 4.2.2: digamma, trigamma, psigamma(x, 2).
    [Theory]
    [InlineData(0.5, -1.96351002602142, 4.93480220054468, -16.8287966442343)]
    [InlineData(1, -0.577215664901532, 1.64493406684823, -2.40411380631919)]
    [InlineData(2.5, 0.703156640645243, 0.490357756100235, -0.236204051641727)]
    [InlineData(10, 2.25175258906672, 0.105166335681686, -0.0110498349708021)]
    [InlineData(100, 4.60016185273809, 0.0100501666633336, -0.00010100499983335)]
    public void Polygamma_ReferencePoints_AgreeWithR(double x, double digamma, double trigamma, double tetragamma)
    {
        Close.Relative(digamma, Polygamma.Digamma(x), 1e-12);
        Close.Relative(trigamma, Polygamma.Trigamma(x), 1e-13);
        Close.Relative(tetragamma, Polygamma.Tetragamma(x), 1e-13);
    }

    [Theory]
    [InlineData(1e-7)]
    [InlineData(0.01)]
    [InlineData(1)]
    [InlineData(50)]
    [InlineData(1e8)]
    public void InverseTrigamma_OfAnyValue_ReturnsToIt(double y) =>
        Close.Relative(y, Polygamma.Trigamma(Polygamma.InverseTrigamma(y)), y is > 1e-6 and < 1e7 ? 1e-10 : 1e-3);

    [Fact]
    public void Binomial_HugeCounts_AgreeWithR()
    {
        double[] shares = [0.001, 0.05, 0.5, 0.95, 0.999];
        int[] trials = [10, 1_500, 100_000, 1_000_000];
        double[] levels = [0.005, 0.025, 0.5, 0.975];
        var expected = OutsideProgram.R("for (n in c(10,1500,1e5,1e6)) for (s in c(.001,.05,.5,.95,.999)) for (a in c(.005,.025,.5,.975)) { k <- qbinom(a,n,s); p(k, pbinom(k,n,s)) }");
        var i = 0;
        foreach (var n in trials)
        {
            foreach (var share in shares)
            {
                foreach (var level in levels)
                {
                    var count = BinomialDistribution.Quantile(level, n, share);
                    Assert.Equal(expected[i++], count);
                    Close.Relative(expected[i++], BinomialDistribution.Cdf(count, n, share), 1e-10);
                }
            }
        }
    }

    [Fact]
    public void StudentQuantile_RandomArguments_AgreesWithR()
    {
        var generator = new Tarry.Metrology.SeededGenerator(11);
        var inputs = new double[200];
        for (var i = 0; i < inputs.Length; i += 2)
        {
            inputs[i] = Math.Clamp(generator.NextDouble(), 1e-4, 1 - 1e-4);
            inputs[i + 1] = Math.Exp((generator.NextDouble() * 7) - 0.5);
        }

        var expected = OutsideProgram.R("m <- matrix(x, 2); p(qt(m[1,], m[2,]))", inputs);
        for (var i = 0; i < expected.Length; i++)
        {
            Close.Relative(expected[i], StudentDistribution.Quantile(inputs[2 * i], inputs[(2 * i) + 1]), 1e-9);
        }
    }

    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    [InlineData(double.NaN)]
    public void Quantile_LevelOutOfRange_SaysTheRangeAndTheRemedy(double level)
    {
        var error = Assert.Throws<ArgumentOutOfRangeException>(() => StudentDistribution.Quantile(level, 5));
        Assert.Contains("between 0 and 1", error.Message, StringComparison.Ordinal);
        Assert.Contains("0.95", error.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Quantile_NoDegreesOfFreedom_SaysToRunASecondSession()
    {
        var error = Assert.Throws<ArgumentOutOfRangeException>(() => StudentDistribution.Quantile(0.975, 0));
        Assert.Contains("second session", error.Message, StringComparison.Ordinal);
    }
}
