using Tarry.Metrology;
using Tarry.Statistics.Censoring;
using Tarry.Tests;

namespace Tarry.Statistics.Tests.Censoring;

public class TurnbullDistributionTests
{
    private const double None = double.PositiveInfinity;

    // Cosmetic deterioration after radiotherapy alone, months; D. M. Finkelstein and R. A. Wolfe, Biometrics 41 (1985); from memory.
    private static readonly CensoredValue[] Radiotherapy =
    [
        .. new (double, double)[]
        {
            (45, None), (25, 37), (37, None), (6, 10), (46, None), (0, 5), (0, 7), (26, 40), (18, None), (46, None), (46, None), (24, None), (46, None), (27, 34), (36, None), (7, 16),
            (36, 44), (5, 11), (17, None), (46, None), (19, 35), (7, 14), (36, 48), (17, 25), (37, 44), (37, None), (24, None), (0, 8), (40, None), (32, None), (4, 11), (17, 25),
            (33, None), (15, None), (46, None), (19, 26), (11, 15), (11, 18), (37, None), (22, None), (38, None), (34, None), (46, None), (5, 12), (36, None), (46, None),
        }.Select(pair => new CensoredValue(pair.Item1, pair.Item2)),
    ];

    [Fact]
    public void Masses_OfTheRadiotherapyData_AreThePublishedOnes()
    {
        // Published with the R package interval (M. P. Fay, P. A. Shaw, J. Stat. Softw. 36, 2010), four digits; from memory, and found by npsurv below.
        var found = TurnbullDistribution.Of(Radiotherapy);
        Assert.True(found.Converged);
        (double Low, double High, double Mass)[] published =
            [(4, 5, 0.0463), (6, 7, 0.0334), (7, 8, 0.0887), (11, 12, 0.0708), (24, 25, 0.0926), (33, 34, 0.0818), (38, 40, 0.1209), (46, 48, 0.4656)];
        Assert.Equal(published.Select(interval => (interval.Low, interval.High)), found.Support.Select(interval => (interval.Low, interval.High)));
        foreach (var (expected, actual) in published.Zip(found.Support))
        {
            Assert.InRange(actual.Mass, expected.Mass - 1e-4, expected.Mass + 1e-4);
        }
    }

    [Fact]
    public void Masses_OfFramesOfAVideo_AreThoseOfNpsurv()
    {
        Requirement.Needs(Directory.Exists("/usr/lib/R/site-library/npsurv"), "the R package npsurv (Debian package r-cran-npsurv)");
        var generator = new SeededGenerator(11);
        CensoredValue[] values = [.. Enumerable.Range(0, 300).Select(_ =>
        {
            var frames = Math.Floor((2 * generator.NextDouble()) + (8 * generator.NextDouble()) + 2);
            return new CensoredValue((frames - 1) / 240, (frames + 1) / 240);
        })];
        Same(values);
    }

    [Fact]
    public void Masses_OfIntervalsOfAnyWidth_AreThoseOfNpsurv()
    {
        Requirement.Needs(Directory.Exists("/usr/lib/R/site-library/npsurv"), "the R package npsurv (Debian package r-cran-npsurv)");
        var generator = new SeededGenerator(12);
        Same([.. Enumerable.Range(0, 200).Select(_ =>
        {
            var low = 10 * generator.NextDouble();
            return new CensoredValue(low, low + 0.5 + (3 * generator.NextDouble()));
        })]);
        Same(Radiotherapy);
    }

    [Fact]
    public void Survival_OfIntervals_IsThatOfTheSurvivalPackage()
    {
        Requirement.Needs(Directory.Exists("/usr/lib/R/library/survival"), "the R package survival (Debian package r-cran-survival)");
        var found = TurnbullDistribution.Of(Radiotherapy);
        // survfit iterates self-consistency alone and stops early: three digits are what it gives.
        var survival = OutsideProgram.R(
            "library(survival); n <- length(x)/2; r <- x[n+1:n]; r[r > 1e8] <- NA; f <- survfit(Surv(x[1:n], r, type='interval2')~1); p(summary(f, times=c(5.5, 8.5, 20, 30, 36, 43))$surv)",
            [.. Radiotherapy.Select(value => value.Low), .. Radiotherapy.Select(value => Math.Min(value.High, 1e9))]);
        double[] times = [5.5, 8.5, 20, 30, 36, 43];
        foreach (var (time, expected) in times.Zip(survival))
        {
            Assert.InRange(found.Support.Where(interval => interval.Low > time).Sum(interval => interval.Mass), expected - 2e-3, expected + 2e-3);
        }
    }

    [Fact]
    public void ExactValues_AreTheirOwnEmpiricalDistribution()
    {
        var found = TurnbullDistribution.Of([.. new double[] { 3, 1, 2, 2 }.Select(value => new CensoredValue(value, value))]);
        Assert.Equal([1.0, 2, 3], found.Support.Select(interval => interval.Low));
        Assert.Equal([0.25, 0.5, 0.25], found.Support.Select(interval => Math.Round(interval.Mass, 9)));
        Assert.Equal((2.0, 2.0), found.QuantileRange(0.5));
        Assert.Equal((2.0, 3.0), found.QuantileRange(0.75));
        Assert.Equal(2, found.MeanBounds().Low, 9);
    }

    [Fact]
    public void QuantileRange_OfOneFrame_IsTheFrame()
    {
        var found = TurnbullDistribution.Of([.. Enumerable.Repeat(new CensoredValue(3, 5), 50)]);
        Assert.Equal((3.0, 5.0), found.QuantileRange(0.5));
        Assert.Equal((3.0, 5.0), found.MeanBounds());
    }

    [Fact]
    public void Values_ThatCannotBe_AreRefused()
    {
        Assert.Throws<ArgumentException>(() => TurnbullDistribution.Of([]));
        Assert.Throws<ArgumentException>(() => TurnbullDistribution.Of([new CensoredValue(2, 1)]));
        Assert.Throws<ArgumentException>(() => TurnbullDistribution.Of([new CensoredValue(double.NaN, 1)]));
    }

    // npsurv 0.5-0, npsurv(cbind(low, high)): its support and masses, and its log-likelihood.
    private static void Same(CensoredValue[] values)
    {
        var found = TurnbullDistribution.Of(values);
        Assert.True(found.Converged);
        var logLikelihood = OutsideProgram.R(
            "suppressMessages(library(npsurv)); n <- length(x)/2; r <- x[n+1:n]; r[r > 1e8] <- Inf; p(npsurv(cbind(x[1:n], r))$ll)",
            [.. values.Select(value => value.Low), .. values.Select(value => Math.Min(value.High, 1e9))])[0];
        var own = values.Sum(value => Math.Log(found.Support.Where(interval => interval.Low >= value.Low && interval.High <= value.High).Sum(interval => interval.Mass)));
        Assert.Equal(logLikelihood, own, 1e-5);
    }
}
