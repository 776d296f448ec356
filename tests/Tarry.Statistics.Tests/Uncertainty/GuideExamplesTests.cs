using Tarry.Metrology;
using Tarry.Statistics.Descriptives;
using Tarry.Statistics.Lines;
using Tarry.Statistics.Uncertainty;

namespace Tarry.Statistics.Tests.Uncertainty;

/// <summary>The worked examples of JCGM 100:2008 (GUM) and JCGM 101:2008.</summary>
public class GuideExamplesTests
{
    // GUM H.1, end-gauge; to ten digits in MSLNZ/GTC, test/test_uncertain_real_dof.py, which takes l_s = 50 mm in the sensitivities.
    private static readonly UncertaintyComponent[] EndGauge =
    [
        new(25, 1, 18),
        new(5.8, 1, 24),
        new(3.9, 1, 5),
        new(6.7, 1, 8),
        new(TypeB.StandardUncertainty(1e-6, UncertaintyDistribution.Rectangular), 5e7 * 0.1, 50),
        new(TypeB.StandardUncertainty(0.05, UncertaintyDistribution.Rectangular), -5e7 * 11.5e-6, 2),
    ];

    [Fact]
    public void Expanded_OfTheEndGauge_IsThatOfAnnexH1()
    {
        var expanded = ExpandedUncertainty.Of(EndGauge, 0.99);
        Close.Relative(31.6637674111, expanded.Standard, 1e-11);
        Close.Relative(16.7521475092, expanded.DegreesOfFreedom, 1e-11);

        // Printed in H.1.6: v_eff 16, t.99(16) = 2.92, U99 = 2.92 x 32 = 93 nm with u_c rounded up first.
        Close.Absolute(2.92, expanded.CoverageFactor, 0.005);
        Close.Absolute(93, expanded.CoverageFactor * Math.Round(expanded.Standard), 0.5);
    }

    [Fact]
    public void Combine_OfTheObservedDifference_IsThatOfAnnexH1()
    {
        var parts = ExpandedUncertainty.Of(EndGauge.AsSpan(1, 3));
        Close.Relative(9.68194195397, parts.Standard, 1e-11);
        Close.Relative(25.4472507774, parts.DegreesOfFreedom, 1e-10);
        Close.Relative(2.88675134595, Math.Abs(EndGauge[4].Contribution), 1e-11);
        Close.Relative(16.5988202392, Math.Abs(EndGauge[5].Contribution), 1e-11);
    }

    [Fact]
    public void Combine_OfANormalAndACyclicPart_IsThatOfAnnexH1()
    {
        // H.1.3.4: the temperature, 0.2 and a cycle of +-0.5.
        UncertaintyComponent[] temperature = [new(0.2, 1, double.PositiveInfinity), new(TypeB.StandardUncertainty(0.5, UncertaintyDistribution.Arcsine), 1, double.PositiveInfinity)];
        Close.Relative(0.406201920232, LawOfPropagation.Combine(temperature), 1e-11);
    }

    [Fact]
    public void Combine_OfCorrelatedInputs_GivesResistanceReactanceAndImpedanceOfAnnexH2()
    {
        // Table H.2, five simultaneous sets: volts, amperes, phase.
        double[][] sets =
        [
            [5.007, 4.994, 5.005, 4.990, 4.999],
            [19.663e-3, 19.639e-3, 19.640e-3, 19.685e-3, 19.678e-3],
            [1.0456, 1.0438, 1.0468, 1.0428, 1.0433],
        ];
        double[] means = [.. sets.Select(set => Moments.Mean(set))];
        double[] errors = [.. sets.Select(set => Moments.StandardDeviation(set) / Math.Sqrt(set.Length))];
        Close.Relative(3.20936131e-3, errors[0], 1e-8);
        Close.Relative(9.47100839e-6, errors[1], 1e-8);
        Close.Relative(7.52063827e-4, errors[2], 1e-8);
        var correlations = Correlations(sets, means);
        Close.Absolute(-0.355311, correlations[0, 1], 5e-7);
        Close.Absolute(0.857624, correlations[0, 2], 5e-7);
        Close.Absolute(-0.645111, correlations[1, 2], 5e-7);

        var impedance = means[0] / means[1];
        var (sine, cosine) = Math.SinCos(means[2]);
        var resistance = Components(errors, cosine / means[1], -impedance * cosine / means[1], -impedance * sine);
        var reactance = Components(errors, sine / means[1], -impedance * sine / means[1], impedance * cosine);
        var whole = Components(errors, 1 / means[1], -impedance / means[1], 0);
        Close.Relative(127.732169928, impedance * cosine, 1e-10);
        Close.Relative(219.846511913, impedance * sine, 1e-10);
        Close.Absolute(0.0710714, LawOfPropagation.Combine(resistance, correlations), 5e-8);
        Close.Absolute(0.2955817, LawOfPropagation.Combine(reactance, correlations), 5e-8);
        Close.Absolute(0.2363361, LawOfPropagation.Combine(whole, correlations), 5e-8);
        Close.Absolute(-0.588429784, Correlation(resistance, reactance, correlations), 1e-8);
        Close.Absolute(-0.485259224, Correlation(resistance, whole, correlations), 1e-8);
        Close.Absolute(0.992511649, Correlation(reactance, whole, correlations), 1e-8);
    }

    [Fact]
    public void Line_OfTheThermometer_IsThatOfAnnexH3()
    {
        // Table H.6: corrections against temperature less 20 degrees.
        double[] temperature = [1.521, 2.012, 2.512, 3.003, 3.507, 3.999, 4.513, 5.002, 5.503, 6.010, 6.511];
        double[] correction = [-0.171, -0.169, -0.166, -0.159, -0.164, -0.165, -0.156, -0.157, -0.159, -0.161, -0.160];
        var line = StraightLine.Fit(temperature, correction);
        Close.Absolute(-0.1712038, line.At(0), 5e-8);
        Close.Absolute(0.0028776, line.UncertaintyAt(0), 5e-8);
        Close.Absolute(0.0021826977, line.Slope, 5e-11);
        Close.Absolute(0.0006679, line.SlopeUncertainty, 5e-8);
        Close.Absolute(0.00349756, line.Deviation, 5e-9);
        Close.Absolute(-0.14937681, line.At(10), 5e-9);
        Close.Absolute(0.00413860, line.UncertaintyAt(10), 5e-9);

        // H.3.4: the same from intercept, slope and their correlation.
        UncertaintyComponent[] parts = [new(line.UncertaintyAt(0), 1, 9), new(line.SlopeUncertainty, 10, 9)];
        const double r = -0.9304296;
        Close.Absolute(0.00413860, LawOfPropagation.Combine(parts, new[,] { { 1, r }, { r, 1 } }), 5e-9);
    }

    [Fact]
    public void EffectiveDegreesOfFreedom_OfTheThreeFactors_AreThoseOfG41()
    {
        // G.4.1, example: relative standard uncertainties 0.25 %, 0.57 %, 0.82 % with 9, 4 and 14; printed u 1.03 %, v_eff 19.0.
        var expanded = ExpandedUncertainty.Of([new(0.25, 1, 9), new(0.57, 1, 4), new(0.82, 1, 14)]);
        Close.Absolute(18.99874, expanded.DegreesOfFreedom, 5e-6);
        Close.Absolute(1.03, expanded.Standard, 0.005);
    }

    [Fact]
    public void DegreesOfFreedom_OfAnUncertaintyKnownToAQuarter_AreEight() => Assert.Equal(8, TypeB.DegreesOfFreedom(0.25));

    [Theory]
    [InlineData(UncertaintyDistribution.Rectangular, 0.577350269)]
    [InlineData(UncertaintyDistribution.Triangular, 0.408248290)]
    [InlineData(UncertaintyDistribution.Arcsine, 0.707106781)]
    [InlineData(UncertaintyDistribution.Normal, 1)]
    public void StandardUncertainty_OfLimits_IsDividedAsTheGuideSays(UncertaintyDistribution distribution, double expected) =>
        Close.Absolute(expected, TypeB.StandardUncertainty(1, distribution), 5e-10);

    [Theory]
    [InlineData(1, 3.919927969, 2.0, 0)]
    [InlineData(10, 19.89, 10.148892, 0.005)]
    public void Expanded_OfFourParts_IsTheLawOfPropagationsOfJcgm101(double last, double expanded, double standard, double tolerance)
    {
        // JCGM 101:2008 9.2: y = x1 + x2 + x3 + x4 of standard deviations 1, 1, 1 and 1 or 10; the law gives +-3.92 and +-19.89.
        var found = ExpandedUncertainty.Of([.. new[] { 1, 1, 1, last }.Select(u => new UncertaintyComponent(u, 1, double.PositiveInfinity))]);
        Close.Absolute(standard, found.Standard, 5e-7);
        Close.Absolute(expanded, found.Expanded, Math.Max(tolerance, 5e-9));
    }

    [Theory]
    [InlineData(1, 3.879406741)]
    [InlineData(10, 17.015814)]
    public void Expanded_OfFourRectangularParts_IsNeverTooNarrow(double last, double exact)
    {
        // JCGM 101:2008 9.2.3 and 9.2.4: the exact 95 % half-widths of such sums, printed as 3.88 and 17.0; by drawing, and below the law's.
        var half = new[] { 1, 1, 1, last }.Select(sd => sd * TypeB.Divisor(UncertaintyDistribution.Rectangular)).ToArray();
        var random = new SeededGenerator(101);
        const int draws = 200_000;
        var sums = new double[draws];
        for (var i = 0; i < draws; i++)
        {
            sums[i] = Math.Abs(half.Sum(limit => limit * ((2 * random.NextDouble()) - 1)));
        }

        Close.Share(0.95, sums.Count(sum => sum <= exact), draws);
        var law = ExpandedUncertainty.Of([.. half.Select(limit => new UncertaintyComponent(TypeB.StandardUncertainty(limit, UncertaintyDistribution.Rectangular), 1, double.PositiveInfinity))]);
        Assert.True(law.Expanded >= exact, $"{law.Expanded} covers less than {exact}");
    }

    [Fact]
    public void Combine_OfWhatIsCommonToBothSidesOfADifference_IsZero()
    {
        // GUM 5.2.2, note 1: with r = +1 contributions add with their signs.
        UncertaintyComponent[] sides = [new(3, 1, 8), new(3, -1, 8)];
        Assert.Equal(0, LawOfPropagation.Combine(sides, new double[,] { { 1, 1 }, { 1, 1 } }));
    }

    [Fact]
    public void Combine_OfCorrelationsOfAnotherSize_IsRefused() =>
        Assert.Throws<ArgumentException>(() => LawOfPropagation.Combine([new(1, 1, 8)], new double[,] { { 1, 0 }, { 0, 1 } }));

    private static UncertaintyComponent[] Components(double[] errors, params double[] sensitivities) =>
        [.. errors.Zip(sensitivities, (error, sensitivity) => new UncertaintyComponent(error, sensitivity, 4))];

    private static double Correlation(UncertaintyComponent[] first, UncertaintyComponent[] second, double[,] correlations) =>
        LawOfPropagation.Covariance([.. first.Select(part => part.Contribution)], [.. second.Select(part => part.Contribution)], correlations)
        / (LawOfPropagation.Combine(first, correlations) * LawOfPropagation.Combine(second, correlations));

    private static double[,] Correlations(double[][] sets, double[] means)
    {
        var found = new double[sets.Length, sets.Length];
        for (var i = 0; i < sets.Length; i++)
        {
            for (var j = 0; j < sets.Length; j++)
            {
                var products = sets[i].Zip(sets[j], (a, b) => (a - means[i]) * (b - means[j])).Sum();
                found[i, j] = i == j ? 1 : products / ((sets[i].Length - 1) * Moments.StandardDeviation(sets[i]) * Moments.StandardDeviation(sets[j]));
            }
        }

        return found;
    }
}
