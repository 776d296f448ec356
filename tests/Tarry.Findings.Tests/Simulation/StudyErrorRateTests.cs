using Tarry.Findings.Quality;

namespace Tarry.Findings.Tests.Simulation;

/// <summary>
/// What whole studies say that is not so; tests/soak repeats it with a thousand studies of every design. The bound is 5 % and
/// three standard errors of the binomial.
/// </summary>
public class StudyErrorRateTests
{
    [Theory]
    [InlineData("3 conditions, 3 sittings")]
    [InlineData("12 conditions, 4 sittings, 20 % of sessions missing")]
    public void ConditionsThatAreAlike_AreToldApartInFewStudies(string design)
    {
        const int studies = 100;
        var (comparisons, factors) = (0, 0);
        for (var study = 0; study < studies; study++)
        {
            var document = SimulatedStudy.Analyse(SimulatedDesigns.Null[design] with { Trials = 40 }, (ulong)(500 + study));
            comparisons += FalseFindings.InComparisons(document) ? 1 : 0;
            factors += FalseFindings.InContrasts(document) || FalseFindings.InCosts(document) ? 1 : 0;
        }

        Assert.InRange(comparisons / (double)studies, 0, Bound(studies));
        Assert.InRange(factors / (double)studies, 0, Bound(studies));
    }

    [Theory]
    [InlineData("8 conditions, 2 sittings, 400 trials", 40)]
    [InlineData("24 conditions, 4 sittings, 1500 trials", 1)]
    [InlineData("8 conditions, 4 sittings, 400 trials, all 8 ms blocks", 20)]
    public void CleanSessions_AreAccusedInFewStudies(string design, int studies)
    {
        var accused = Enumerable.Range(0, studies).Count(study => FalseFindings.OfSessions(SimulatedStudy.SessionCautions(SimulatedDesigns.Clean[design], (ulong)(900 + study))).Any());
        Assert.InRange(accused / (double)studies, 0, Bound(studies));
    }

    /// <summary>Faults that no study may miss.</summary>
    [Theory]
    [InlineData("presses locked to 8 ms, rate stated")]
    [InlineData("presses locked to 8 ms, rate not stated")]
    [InlineData("presses every 100 ms +- 2 ms")]
    [InlineData("step of 1.2 ms at 40 %")]
    [InlineData("warm-up of 2 ms, time constant a fifth of the session")]
    [InlineData("warm-up of 1 ms, 1 ms report interval")]
    public void AFault_IsCaughtByItsCaution(string fault)
    {
        var (suspect, kinds) = SimulatedDesigns.Faults[fault];
        Assert.All(Enumerable.Range(0, 1), study =>
        {
            var cautions = SimulatedStudy.SessionCautions(SimulatedDesigns.WithOne(suspect), (ulong)(40 + study));
            Assert.Contains(cautions, caution => kinds.Contains(caution.Kind) && caution.Subject.EndsWith("suspect", StringComparison.Ordinal));
        });
    }

    [Fact]
    public void ALock_IsFoundAtTheDevicesPeriod_WithoutAStatedRate()
    {
        var (suspect, _) = SimulatedDesigns.Faults["presses locked to 8 ms, rate not stated"];
        var locks = SimulatedStudy.SessionCautions(SimulatedDesigns.WithOne(suspect, trials: 400), 3)
            .Where(caution => caution.Kind == CautionKind.PhaseLocked).ToList();
        Assert.Equal(3, locks.Count);

        // A line through 400 intervals of 9 to 16 periods (sd 2.3), each off by sd 0.16 ms: the slope's standard error is 0.0035 ms.
        Assert.All(locks, caution => Assert.Equal(8, caution.Numbers["period_ms"], 4 * 0.0035));
    }

    private static double Bound(int studies) => 0.05 + (3 * Math.Sqrt(0.05 * 0.95 / studies));
}
