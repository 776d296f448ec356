using Tarry.Findings.Comparisons;
using Tarry.Metrology;

namespace Tarry.Findings.Tests.Comparisons;

/// <summary>Simulations with known truth; the tolerance is three standard errors of the binomial, so a true 95 % fails once in 700 runs.</summary>
public class DifferenceCoverageTests
{
    private static double ThreeErrors(double share, int count) => 3 * Math.Sqrt(share * (1 - share) / count);

    [Theory]
    [InlineData(2, 4)]
    [InlineData(3, 4)]
    [InlineData(4, 6)]
    public void Relative_OverSittings_HoldsTheTruthAtTheStatedRate(int sittings, int devices)
    {
        const int studies = 200;
        var held = 0;
        for (var study = 0; study < studies; study++)
        {
            var document = new SyntheticStudy((ulong)((1000 * sittings) + study)) { Trials = 60 }
                .Add(sittings, [("ref", 5, 1), .. Enumerable.Range(1, devices).Select(i => ($"d{i}", 5 + (0.2 * i), 8.0))])
                .Analyse();
            held += document.Conditions.Skip(1).Select((condition, index) => Holds(condition.Relative!, (0.2 * (index + 1)) + 3.5)).Count(holds => holds);
        }

        // Intervals of one study share its reference, so the studies count, not the intervals.
        var coverage = held / (double)(studies * devices);
        Assert.InRange(coverage, 0.95 - ThreeErrors(0.95, studies), 0.995);
    }

    /// <summary>Offsets that the conditions of a sitting share are seen once a sitting: means must not borrow them C times.</summary>
    [Fact]
    public void MeanAndMedian_OfConditionsThatShareSittings_HoldTheTruthAtTheStatedRate()
    {
        const int studies = 150;
        const int devices = 8;
        int means = 0, spreads = 0;
        for (var study = 0; study < studies; study++)
        {
            var document = new SyntheticStudy((ulong)(20_000 + study)) { Trials = 200, SharedSd = 0.4, OwnSd = 0.1 }
                .Add(3, [.. Enumerable.Range(0, devices).Select(i => ($"d{i}", 5.0, 8.0))])
                .Analyse();
            means += document.Conditions.Count(condition => condition.Mean is Estimate<Latency> mean
                && mean.Interval.Contains(Latency.FromMilliseconds(SyntheticStudy.MeanOf(5, 8))));
            spreads += document.Conditions.Count(condition => condition.Spread is Estimate<LatencyDifference> spread
                && spread.Interval.Contains(LatencyDifference.FromMilliseconds(SpreadOfUniform8And4Point1AndNormal)));
        }

        // Conditions of a study share its sittings, so the studies count.
        Assert.InRange(means / (double)(studies * devices), 0.95 - ThreeErrors(0.95, studies), 1);
        Assert.InRange(spreads / (double)(studies * devices), 0.95 - ThreeErrors(0.95, studies), 1);
    }

    // p95 - p5 of Uniform(0, 8) + Uniform(0, 4.1) + Normal(0, 0.3): SciPy 1.10.1, root of the distribution function by
    // quadrature of the trapezoid over the normal.
    private const double SpreadOfUniform8And4Point1AndNormal = 8.527886;

    [Fact]
    public void Verdict_OfEqualConditions_IsSlowerOrFasterInFewStudies()
    {
        const int studies = 200;
        var accused = 0;
        for (var study = 0; study < studies; study++)
        {
            var document = new SyntheticStudy((ulong)(7000 + study)) { Trials = 60, OwnSd = 0.3, SharedSd = 0 }
                .Add(4, [("ref", 5, 1), .. Enumerable.Range(1, 5).Select(i => ($"d{i}", 5.0, 1.0))])
                .Analyse();
            accused += document.Comparisons.Any(pair => pair.Verdict is Verdict.Slower or Verdict.Faster or Verdict.BelowMargin) ? 1 : 0;
        }

        Assert.InRange(accused / (double)studies, 0, 0.05 + ThreeErrors(0.05, studies));
    }

    [Fact]
    public void Verdict_OfATrueThirdOfAMillisecond_IsToldWhereTheDesignAllowsIt()
    {
        const int studies = 40;
        var told = 0;
        for (var study = 0; study < studies; study++)
        {
            var document = new SyntheticStudy((ulong)(9000 + study)) { Trials = 1500, OwnSd = 0.05 }
                .Add(4, [("ref", 5, 1), ("a", 5.3, 1), ("b", 5, 1), ("c", 5, 1), ("d", 5, 1)])
                .Analyse(marginMs: 0.1);
            var pair = document.Comparisons.Single(comparison => comparison is { A: "ref", B: "a" });
            Assert.True(pair.MinimumDetectable!.Value.Milliseconds < 0.3, $"the design tells only {pair.MinimumDetectable}");
            told += pair.Verdict == Verdict.Faster ? 1 : 0;
        }

        // 80 % power at the minimum detectable difference, and 0.3 ms is beyond it.
        Assert.InRange(told / (double)studies, 0.8, 1);
    }

    private static bool Holds(EstimateOutcome<LatencyDifference> outcome, double truthMs) =>
        Assert.IsType<Estimate<LatencyDifference>>(outcome).Interval.Contains(LatencyDifference.FromMilliseconds(truthMs));
}
