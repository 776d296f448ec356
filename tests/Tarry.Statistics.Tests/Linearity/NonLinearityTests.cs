using Tarry.Metrology;
using Tarry.Statistics.Linearity;
using Tarry.Statistics.Lines;

namespace Tarry.Statistics.Tests.Linearity;

/// <summary>Values by NumPy from the definitions of IEEE 1057 and 1241 (reference-checks, section 9).</summary>
public class NonLinearityTests
{
    private static readonly double[] Transitions = [.5, 1.4, 2.6, 3.5, 4.7, 5.5, 6.4];

    [Fact]
    public void Differential_OfKnownTransitions_IsTheReference()
    {
        Assert.Equal(.983333333, DifferentialNonLinearity.MeanWidth(Transitions), 1e-9);
        Near([-.08474576, .22033898, -.08474576, .22033898, -.18644068, -.08474576], DifferentialNonLinearity.Of(Transitions), 1e-8);
    }

    [Fact]
    public void Integral_OfKnownTransitions_IsTheReference()
    {
        Near([0, -.08474576, .13559322, .05084746, .27118644, .08474576, 0], IntegralNonLinearity.EndPoint(Transitions), 1e-8);
        Near([-.01428571, -.11428571, .08571429, -.01428571, .18571429, -.01428571, -.11428571], IntegralNonLinearity.BestFit(Transitions), 1e-8);
    }

    [Fact]
    public void EndPoint_OfAnyTransitions_IsTheRunningSumOfDifferential()
    {
        var random = new SeededGenerator(5);
        double[] transitions = [.. Enumerable.Range(0, 100).Select(k => k + (0.3 * random.NextDouble()))];
        var (sum, integral) = (0.0, IntegralNonLinearity.EndPoint(transitions));
        foreach (var (differential, k) in DifferentialNonLinearity.Of(transitions).Select((value, k) => (value, k)))
        {
            sum += differential;
            Assert.Equal(sum, integral[k + 1], 1e-10);
        }
    }

    [Fact]
    public void RampHistogram_OfCounts_IsTheReference()
    {
        var transitions = CodeTransitions.FromRampHistogram([60, 100, 120, 80, 110, 90, 100, 140]);
        Near([0, .2, -.2, .1, -.1, 0], DifferentialNonLinearity.Of(transitions), 1e-12);
        Near([0, 0, .2, 0, .1, 0, 0], IntegralNonLinearity.EndPoint(transitions), 1e-12);
    }

    [Fact]
    public void SineHistogram_OfCounts_IsTheReference() =>
        Near(
            [-.86074203, -.67301251, -.46792981, -.24868989, -.01256604, .24259923, .52249856],
            CodeTransitions.FromSineHistogram([170, 95, 80, 75, 76, 82, 97, 325]),
            1e-8);

    [Fact]
    public void KnownLevels_OfANoisyConverter_GiveItsTransitions()
    {
        // A converter of eight codes whose transitions are those above, a ramp of 80,000 positions with normal noise.
        var random = new SeededGenerator(6);
        double[] levels = [.. Enumerable.Range(0, 80_000).Select(i => (i * 9e-5) - 0.1)];
        int[] codes = [.. levels.Select(level => Transitions.Count(transition => level + (0.2 * random.NextNormal()) >= transition))];
        var found = CodeTransitions.FromKnownLevels(levels, codes, first: 1, count: 7);

        // Variance of the integral of a chance p(1 - p) over the level: sd/sqrt(pi) times the step.
        var error = Math.Sqrt(0.2 / Math.Sqrt(Math.PI) * 9e-5);
        Assert.All(Transitions.Zip(found), pair => Assert.InRange(Math.Abs(pair.First - pair.Second), 0, 4.5 * error));
    }

    [Fact]
    public void KnownLevels_WithoutNoise_LieWithinAStepOfTheLevels()
    {
        double[] levels = [.. Enumerable.Range(0, 701).Select(i => i * 0.01)];
        int[] codes = [.. levels.Select(level => Transitions.Count(transition => level >= transition))];
        Near(Transitions, CodeTransitions.FromKnownLevels(levels, codes, 1, 7), 0.0051);
    }

    [Fact]
    public void EffectiveBits_OfSinad_AreTheReference()
    {
        Assert.Equal(11.334267082, EffectiveBits.FromSinad(70), 1e-9);
        Near([49.9257119, 74.0081115, 98.0905112], [EffectiveBits.IdealSinad(8), EffectiveBits.IdealSinad(12), EffectiveBits.IdealSinad(16)], 1e-7);
        Assert.Equal(10, EffectiveBits.FromError(1024, 1 / Math.Sqrt(12)), 1e-12);
    }

    [Fact]
    public void MinimaxLine_OfSixPoints_IsTheReference()
    {
        var line = MinimaxLine.Fit([0, 1, 2, 3, 4, 5], [.02, .98, 2.05, 3.10, 3.96, 5.00]);
        Assert.Equal(.993333333, line.Slope, 1e-9);
        Assert.Equal(.053333333, line.Intercept, 1e-9);
        Assert.Equal(.066666667, line.Deviation, 1e-9);
    }

    [Fact]
    public void StraightLine_OfSixPoints_IsTheReference()
    {
        var line = StraightLine.Fit([0, 1, 2, 3, 4, 5], [.02, .98, 2.05, 3.10, 3.96, 5.00]);
        Assert.Equal(.996857142857, line.Slope, 1e-12);
        Assert.Equal(.0261904761905, line.At(0), 1e-12);
        Assert.Equal(.0563703738467, line.Deviation, 1e-12);
    }

    private static void Near(double[] expected, double[] found, double tolerance)
    {
        Assert.Equal(expected.Length, found.Length);
        Assert.All(expected.Zip(found), pair => Assert.Equal(pair.First, pair.Second, tolerance));
    }
}
