using Tarry.Metrology;
using Tarry.Statistics.Comparisons;
using Tarry.Statistics.Descriptives;

namespace Tarry.Statistics.Tests.Comparisons;

public sealed class ModeratedVarianceTests
{
    [Theory]
    [InlineData(1, 24, 0.8, false)]
    [InlineData(2, 10, 0.8, true)]
    [InlineData(3, 200, 0.3, true)]
    [InlineData(4, 12, 0, false)]
    [InlineData(5, 3, 0.6, true)]
    [InlineData(6, 2, 1.5, false)]
    [InlineData(7, 40, 0, true)]
    public void Squeeze_RandomVariances_AgreesWithLimma(int seed, int conditions, double spread, bool unequal)
    {
        var generator = new SeededGenerator((ulong)seed);
        var degrees = new double[conditions];
        var variances = new double[conditions];
        for (var i = 0; i < conditions; i++)
        {
            degrees[i] = unequal ? 1 + generator.NextInt32(5) : 3;
            variances[i] = Math.Exp(spread * 2 * generator.NextNormal()) * ChiSquare(generator, (int)degrees[i]) / degrees[i];
        }

        var expected = OutsideProgram.R(
            "m <- matrix(x, ncol = 2); s <- limma::squeezeVar(m[,1], m[,2]); p(s$df.prior, s$var.prior, s$var.post)",
            [.. variances, .. degrees]);
        var moderated = ModeratedVariance.Squeeze(variances, degrees);
        Assert.Equal(double.IsPositiveInfinity(expected[0]), double.IsPositiveInfinity(moderated.PriorDegreesOfFreedom));
        if (double.IsFinite(expected[0]))
        {
            // limma's own inverse of trigamma stops at 1e-8.
            Close.Relative(expected[0], moderated.PriorDegreesOfFreedom, 1e-7);
        }

        Close.Relative(expected[1], moderated.PriorVariance, 1e-7);
        for (var i = 0; i < conditions; i++)
        {
            Close.Relative(expected[i + 2], moderated.Posterior[i], 1e-7);
            Close.Relative(Math.Min(moderated.PriorDegreesOfFreedom + degrees[i], degrees.Sum()), moderated.TotalDegreesOfFreedom[i], 1e-15);
        }
    }

    [Fact]
    public void Squeeze_ZeroVarianceAndSingleSession_AgreesWithLimma()
    {
        double[] variances = [0.04, 0, 0.09, 0.02, 7, 0.05];
        double[] degrees = [3, 3, 2, 4, 0, 3];
        var expected = OutsideProgram.R("m <- matrix(x, ncol = 2); s <- suppressWarnings(limma::squeezeVar(m[,1], m[,2])); p(s$df.prior, s$var.prior, s$var.post)", [.. variances, .. degrees]);
        var moderated = ModeratedVariance.Squeeze(variances, degrees);
        Close.Relative(expected[0], moderated.PriorDegreesOfFreedom, 1e-7);
        for (var i = 0; i < variances.Length; i++)
        {
            Close.Relative(expected[i + 2], moderated.Posterior[i], 1e-7);
        }
    }

    [Fact]
    public void Squeeze_OneCondition_HasNoPrior()
    {
        var moderated = ModeratedVariance.Squeeze([0.3], [2]);
        Assert.Equal((0, 0.3, 2), (moderated.PriorDegreesOfFreedom, moderated.Posterior[0], moderated.TotalDegreesOfFreedom[0]));
    }

    [Fact]
    public void Squeeze_SingleSessionWithoutOthers_HasNoDegreesOfFreedom() =>
        Assert.Equal(0, ModeratedVariance.Squeeze([0], [0]).TotalDegreesOfFreedom[0]);

    [Fact]
    public void Squeeze_NoVariationAtAll_IsZeroAndNotNaN()
    {
        var moderated = ModeratedVariance.Squeeze([0, 0, 0], [2, 2, 2]);
        Assert.Equal((0, 6), (moderated.Posterior[1], moderated.TotalDegreesOfFreedom[1]));
    }

    [Fact]
    public void Squeeze_Scaled_ScalesAndKeepsThePriorDegrees()
    {
        double[] variances = [0.02, 0.5, 0.1, 0.07, 1.1];
        double[] degrees = [2, 3, 3, 4, 1];
        var plain = ModeratedVariance.Squeeze(variances, degrees);
        var scaled = ModeratedVariance.Squeeze([.. variances.Select(v => 1e6 * v)], degrees);
        Close.Relative(plain.PriorDegreesOfFreedom, scaled.PriorDegreesOfFreedom, 1e-9);
        for (var i = 0; i < variances.Length; i++)
        {
            Close.Relative(1e6 * plain.Posterior[i], scaled.Posterior[i], 1e-9);
        }
    }

    [Theory]
    [InlineData(-1, 2)]
    [InlineData(double.NaN, 2)]
    [InlineData(1, -2)]
    public void Squeeze_ImpossibleValues_SaysWhich(double variance, double degrees) =>
        Assert.Contains("[1]", Assert.Throws<ArgumentOutOfRangeException>(() => ModeratedVariance.Squeeze([1, variance], [2, degrees])).Message, StringComparison.Ordinal);

    // 24 conditions, J sessions each, the reference in every session (correlation 0.8 of the offsets), s_b 0.1, n 1,500,
    // s_w 2.6 and 1.22. Known truth 0: the moderated paired interval covers at its level for each J from 2.
    [Theory]
    [InlineData(2, 0.015)]
    [InlineData(3, 0.01)]
    [InlineData(4, 0.01)]
    [InlineData(5, 0.01)]
    public void PairedModeratedInterval_FewSessions_Covers(int sessions, double slack)
    {
        const int conditions = 24;
        const int repetitions = 1000;
        var generator = new SeededGenerator(31);
        var covered = 0;
        var differences = new double[sessions];
        var (means, variances, degrees) = (new double[conditions], new double[conditions], new double[conditions]);
        Array.Fill(degrees, sessions - 1);
        for (var repetition = 0; repetition < repetitions; repetition++)
        {
            for (var condition = 0; condition < conditions; condition++)
            {
                for (var session = 0; session < sessions; session++)
                {
                    differences[session] = Latency(generator, 2.6) - Latency(generator, 1.22);
                }

                means[condition] = Moments.Mean(differences);
                variances[condition] = Moments.Variance(differences);
            }

            var moderated = ModeratedVariance.Squeeze(variances, degrees);
            for (var condition = 0; condition < conditions; condition++)
            {
                var difference = new MeanDifference(
                    means[condition],
                    Math.Sqrt(moderated.Posterior[condition] / sessions),
                    moderated.TotalDegreesOfFreedom[condition]);
                covered += difference.TwoSidedP >= 0.05 ? 1 : 0;
            }
        }

        // Conditions of one study share the prior, so the repetitions, not their products, set the tolerance.
        Close.Share(0.95, covered, conditions * repetitions, slack);
    }

    private static double Latency(SeededGenerator generator, double within) =>
        (0.1 * Math.Sqrt(0.2) * generator.NextNormal()) + (within / Math.Sqrt(1500) * generator.NextNormal());

    private static double ChiSquare(SeededGenerator generator, int degrees)
    {
        var sum = 0.0;
        for (var i = 0; i < degrees; i++)
        {
            var z = generator.NextNormal();
            sum += z * z;
        }

        return sum;
    }
}
