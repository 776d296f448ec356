using Tarry.Statistics.Distributions;
using Tarry.Statistics.Planning;

namespace Tarry.Statistics.Tests.Planning;

public class TestPowerTests
{
    // R 4.2.2 power.t.test(n = 20, delta = 1, sd = 1, strict = TRUE).
    [Fact]
    public void ToTell_TwoSamplesOfTwenty_AgreesWithR() =>
        Close.Absolute(0.868953027725, TestPower.ToTell(1, Math.Sqrt(2.0 / 20), 38), 1e-9);

    // R 4.2.2 power.t.test(power = , delta = )$n; without strict, whose far tail is below 1e-5 here.
    [Theory]
    [InlineData(0.2, 393.406656, 0.8)]
    [InlineData(0.2, 526.333371, 0.9)]
    [InlineData(0.5, 63.7657637, 0.8)]
    [InlineData(0.5, 85.0312894, 0.9)]
    [InlineData(0.8, 25.5246295, 0.8)]
    [InlineData(0.8, 33.8255537, 0.9)]
    public void ToTell_GroupSizesOfR_HaveTheirPower(double difference, double n, double power) =>
        Close.Absolute(power, TestPower.ToTell(difference, Math.Sqrt(2 / n), (2 * n) - 2), 3e-5);

    // The same, type = "paired".
    [Theory]
    [InlineData(0.2, 198.151301, 0.8)]
    [InlineData(0.5, 43.9955247, 0.9)]
    [InlineData(0.8, 14.3028033, 0.8)]
    public void ToTell_PairedSizesOfR_HaveTheirPower(double difference, double n, double power) =>
        Close.Absolute(power, TestPower.ToTell(difference, Math.Sqrt(1 / n), n - 1), 3e-5);

    // R package pwr 1.3-0, pwr.t2n.test(d = .6, n1 = 28, n2 = 35).
    [Fact]
    public void ToTell_UnequalGroups_AgreesWithPwr() =>
        Close.Absolute(0.643977345106, TestPower.ToTell(0.6, Math.Sqrt((1 / 28.0) + (1 / 35.0)), 61), 1e-8);

    // R 4.2.2: the normal probability of both rejections, integrated over the law of s with integrate(rel.tol = 1e-11).
    [Theory]
    [InlineData(155, 0, 1, 3, 0.800564450702)]
    [InlineData(154, 0, 1, 3, 0.797215639)]
    [InlineData(196, 0, 1, 3, 0.900902834554)]
    [InlineData(202, 0.25, 1, 3, 0.800423015232)]
    [InlineData(88, 0, 0.5, 1, 0.902850896555)]
    public void ToShowEquivalent_ParallelGroups_AgreesWithR(int n, double difference, double margin, double sd, double power) =>
        Close.Absolute(power, TestPower.ToShowEquivalent(difference, -margin, margin, sd * Math.Sqrt(2.0 / n), (2 * n) - 2), 1e-9);

    [Theory]
    [InlineData(79, 0.803651488738)]
    [InlineData(99, 0.900799662445)]
    public void ToShowEquivalent_Paired_AgreesWithR(int n, double power) =>
        Close.Absolute(power, TestPower.ToShowEquivalent(0, -1, 1, 3 / Math.Sqrt(n), n - 1), 1e-9);

    // Crossover on the log scale; .8158453 for a coefficient of variation of .30 and 40 subjects is printed in the tests of
    // the R package PowerTOST.
    [Theory]
    [InlineData(20, 0.20, 0.834680190857)]
    [InlineData(28, 0.25, 0.807439464165)]
    [InlineData(40, 0.30, 0.8158453)]
    public void ToShowEquivalent_Crossover_AgreesWithPowerTost(int n, double variation, double power)
    {
        var sd = Math.Sqrt(Math.Log(1 + (variation * variation)));
        Close.Absolute(power, TestPower.ToShowEquivalent(Math.Log(0.95), Math.Log(0.8), Math.Log(1.25), sd * Math.Sqrt(2.0 / n), n - 2), 1e-7);
    }

    [Fact]
    public void ToShowEquivalent_MarginBelowTheNoise_IsImpossible() =>
        Assert.Equal(0, TestPower.ToShowEquivalent(0, -0.001, 0.001, 1, 1000));

    [Fact]
    public void ToTell_LiveAgainstR_AgreesForFewDegreesOfFreedom()
    {
        var expected = OutsideProgram.R("for (df in c(1, 2, 3, 7, 66)) for (d in c(.5, 2, 5)) { q <- qt(.975, df); p(pt(q, df, d, lower=FALSE) + pt(-q, df, d)) }");
        var at = 0;
        foreach (var df in new[] { 1, 2, 3, 7, 66 })
        {
            foreach (var difference in new[] { 0.5, 2, 5 })
            {
                Close.Absolute(expected[at++], TestPower.ToTell(difference, 1, df), 1e-9);
            }
        }
    }
}
