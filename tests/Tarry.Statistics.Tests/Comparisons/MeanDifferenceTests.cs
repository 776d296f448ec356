using Tarry.Statistics.Comparisons;

namespace Tarry.Statistics.Tests.Comparisons;

public sealed class MeanDifferenceTests
{
    // AUTO83B of NIST, worked in boostorg/math doc/distributions/students_t_examples.qbk (-12.946, 136.87; its
    // probability is one tail, 7.855e-26), reproduced by R 4.2.2.
    [Fact]
    public void Welch_CarMileage_AgreesAsPrinted()
    {
        var test = WelchDifference.OfSummaries(20.14458, 6.414700, 249, 30.48101, 6.107710, 79);
        Close.Relative(-12.9462675657, test.Statistic, 1e-11);
        Close.Relative(136.874990094, test.DegreesOfFreedom, 1e-11);
        Close.Relative(1.57090461546e-25, test.TwoSidedP, 1e-9);
    }

    // R 4.2.2: t.test(extra ~ group, sleep).
    [Fact]
    public void Welch_Sleep_AgreesWithR()
    {
        var test = WelchDifference.Of(PublishedData.SleepFirst, PublishedData.SleepSecond);
        Close.Relative(-1.86081346749, test.Statistic, 1e-11);
        Close.Relative(17.7764735162, test.DegreesOfFreedom, 1e-11);
        Close.Relative(0.0793941401874, test.TwoSidedP, 1e-11);
        Close.Limits(-3.36548323071, 0.205483230712, test.Limits(), 1e-10);
    }

    // R 4.2.2: t.test(extra ~ group, sleep, paired = TRUE).
    [Fact]
    public void Paired_Sleep_AgreesWithR()
    {
        var test = PairedDifference.Of(PublishedData.SleepFirst, PublishedData.SleepSecond);
        Close.Relative(-4.06212768338, test.Statistic, 1e-11);
        Assert.Equal(9, test.DegreesOfFreedom);
        Close.Relative(0.00283289019738, test.TwoSidedP, 1e-10);
        Close.Limits(-2.45988576328, -0.700114236723, test.Limits(), 1e-10);
    }

    // Equal variances and counts: Welch's degrees of freedom are the sum of both; one exact side leaves the other's.
    [Fact]
    public void OfVariances_LimitingCases_AreExact()
    {
        Close.Relative(8, WelchDifference.OfVariances(1, 2, 4, 2, 4).DegreesOfFreedom, 1e-15);
        Close.Relative(4, WelchDifference.OfVariances(1, 2, 4, 0, 9).DegreesOfFreedom, 1e-15);
        Assert.True(double.IsPositiveInfinity(WelchDifference.OfVariances(1, 2, double.PositiveInfinity, 2, double.PositiveInfinity).DegreesOfFreedom));
    }

    [Fact]
    public void Statistic_NoVariation_IsInfiniteOrZero()
    {
        Assert.Equal(0, new MeanDifference(2, 0, 3).TwoSidedP);
        Assert.Equal(1, new MeanDifference(0, 0, 3).TwoSidedP);
    }

    // statsmodels 0.13.5, stats/tests/test_tost.py, "clinic" data (there from R's equivalence package).
    private static readonly double[] ClinicFirst = [2.84, 2.51, 2.41, 2.95, 3.14, 3.79, 4.14, 3.85, 3.02, 3.45, 5.37, 3.81, 4.19, 3.16, 3.84];

    private static readonly double[] ClinicSecond = [2.60, 2.82, 2.18, 3.46, 4.01, 3.04, 3.47, 4.06, 2.91, 3.59, 4.51, 3.16, 3.86, 3.31, 3.02];

    [Fact]
    public void Equivalence_Clinic_AgreesAsPublished()
    {
        var welch = WelchDifference.Of(ClinicFirst, ClinicSecond);
        Close.Relative(26.7484787582, welch.DegreesOfFreedom, 1e-11);
        Close.Relative(0.164666666667, welch.Difference, 1e-10);
        Close.Relative(0.253162599108, welch.StandardError, 1e-11);
        Close.Limits(-0.266686298072, 0.596019631406, welch.Limits(0.90), 1e-11);
        Close.Relative(0.0485308397624, EquivalenceTest.Of(welch, -0.6, 0.6).P, 1e-10);

        var paired = PairedDifference.Of(ClinicFirst, ClinicSecond);
        Close.Limits(-0.0744336620516, 0.403766995385, paired.Limits(0.90), 1e-11);
        Close.Relative(0.00316688148927, EquivalenceTest.Of(paired, -0.6, 0.6).P, 1e-10);
    }

    // The same file, logarithms of the data within +-ln 1.25.
    [Fact]
    public void Equivalence_ClinicOnLogScale_AgreesAsPublished()
    {
        double[] first = [.. ClinicFirst.Select(value => Math.Log(value))];
        double[] second = [.. ClinicSecond.Select(value => Math.Log(value))];
        var margin = Math.Log(1.25);
        var welch = WelchDifference.Of(first, second);
        Close.Relative(27.6117703765, welch.DegreesOfFreedom, 1e-11);
        Close.Relative(0.0104708559314, EquivalenceTest.Of(welch, -margin, margin).P, 1e-9);
        Close.Relative(0.000166415792898, EquivalenceTest.Of(PairedDifference.Of(first, second), -margin, margin).P, 1e-9);
    }

    // R 4.2.2: t.test(mu = -+margin, alternative =) each way.
    [Fact]
    public void Equivalence_Sleep_AgreesWithR()
    {
        var paired = PairedDifference.Of(PublishedData.SleepFirst, PublishedData.SleepSecond);
        Close.Limits(-2.29300526703, -0.866994732971, paired.Limits(0.90), 1e-10);
        Close.Relative(0.00265557029, EquivalenceTest.Of(paired, -3, 3).P, 1e-8);
        Close.Relative(0.0211168602465, EquivalenceTest.Of(paired, -2.5, 2.5).P, 1e-10);
        var welch = WelchDifference.Of(PublishedData.SleepFirst, PublishedData.SleepSecond);
        Close.Relative(0.00536162410316, EquivalenceTest.Of(welch, -4, 4).P, 1e-10);
    }

    [Fact]
    public void Equivalence_BoundsSwapped_SaysHowToGiveThem() =>
        Assert.Contains("-margin and +margin", Assert.Throws<ArgumentException>(() => EquivalenceTest.Of(new MeanDifference(0, 1, 5), 1, -1)).Message, StringComparison.Ordinal);

    // z.975 + z.80 = 1.959964 + 0.841621 (normal table).
    [Fact]
    public void MinimumDetectable_InfiniteDegrees_IsTheNormalSum() =>
        Close.Absolute(2 * (1.959964 + 0.841621), MinimumDetectableDifference.Of(2, double.PositiveInfinity), 2e-6);

    // The true power at the minimum detectable difference, from R's noncentral t, is near 0.80.
    [Fact]
    public void MinimumDetectable_FewDegrees_HasAboutThePowerItSays()
    {
        var expected = OutsideProgram.R("for (i in seq(1, length(x), 2)) p(pt(qt(.975, x[i]), x[i], ncp = x[i+1], lower = FALSE))", 6, MinimumDetectableDifference.Of(1, 6), 30, MinimumDetectableDifference.Of(1, 30));
        Close.Absolute(0.80, expected[0], 0.03);
        Close.Absolute(0.80, expected[1], 0.01);
    }
}
