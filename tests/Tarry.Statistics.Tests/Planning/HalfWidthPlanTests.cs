using Tarry.Metrology;
using Tarry.Statistics.Descriptives;
using Tarry.Statistics.Distributions;
using Tarry.Statistics.Planning;

namespace Tarry.Statistics.Tests.Planning;

public class HalfWidthPlanTests
{
    // s_b .2, s_w 2.6, 80 % assurance; R 4.2.2: ceiling(2.6^2 / (J * (H / (qt(.975, df) * sqrt(qchisq(.8, df) / df)))^2 - .2^2)).
    [Theory]
    [InlineData(0.5, 4, 3, 284)]
    [InlineData(0.5, 2, 72, 96)]
    [InlineData(0.2, 9, 8, 743)]
    [InlineData(0.2, 6, 72, 516)]
    public void TrialsPerSession_AloneAndPooled_AgreesWithTheFormulaInR(double halfWidth, int sessions, double degreesOfFreedom, int expected) =>
        Assert.Equal(expected, Math.Ceiling(HalfWidthPlan.TrialsPerSession(halfWidth, sessions, 0.2, 2.6, degreesOfFreedom)!.Value));

    [Fact]
    public void TrialsPerSession_SessionsScatterTooMuch_NoNumberHelps()
    {
        Assert.Null(HalfWidthPlan.TrialsPerSession(0.2, 6, 0.2, 2.6, 5));
        Assert.True(HalfWidthPlan.Endless(6, 0.2, 5) > 0.2);
        Assert.True(HalfWidthPlan.Endless(9, 0.2, 8) < 0.2);
    }

    [Fact]
    public void TrialsPerSession_LiveAgainstR_Agrees()
    {
        var expected = OutsideProgram.R("for (H in c(.2, .5)) for (J in 10:12) { df <- J - 1; p(2.6^2 / (J * (H / (qt(.975, df) * sqrt(qchisq(.8, df) / df)))^2 - .2^2)) }");
        var at = 0;
        foreach (var halfWidth in new[] { 0.2, 0.5 })
        {
            for (var sessions = 10; sessions <= 12; sessions++)
            {
                Close.Relative(expected[at++], HalfWidthPlan.TrialsPerSession(halfWidth, sessions, 0.2, 2.6, sessions - 1)!.Value, 1e-9);
            }
        }
    }

    // The assurance itself: how often a study of the planned size comes out as narrow as it was planned to.
    [Fact]
    public void TrialsPerSession_SimulatedStudies_AreAsNarrowInFourOfFive()
    {
        const int studies = 4000;
        var random = new SeededGenerator(11);
        var n = Math.Ceiling(HalfWidthPlan.TrialsPerSession(0.3, 5, 0.1, 2.6, 4)!.Value);
        var sd = Math.Sqrt((0.1 * 0.1) + (2.6 * 2.6 / n));
        var t = StudentDistribution.Quantile(0.975, 4);
        var narrow = 0;
        for (var study = 0; study < studies; study++)
        {
            double[] means = [.. Enumerable.Range(0, 5).Select(_ => sd * random.NextNormal())];
            narrow += t * Moments.StandardDeviation(means) / Math.Sqrt(5) <= 0.3 ? 1 : 0;
        }

        Close.Share(0.8, narrow, studies, slack: 0.001);
    }

    // Derivative of (s_b^2 + s_w^2/n)(c_s + n c_t) in n, by hand: 0 at sqrt(c_s/c_t) s_w/s_b.
    [Theory]
    [InlineData(60, 318)]
    [InlineData(300, 712)]
    [InlineData(900, 1233)]
    public void EconomicTrials_SetUpAgainstPresses_AgreesWithTheFormula(double setUpSeconds, double expected) =>
        Assert.Equal(expected, Math.Round(EconomicTrials.PerSession(setUpSeconds, 0.1, 0.2, 2.6)!.Value));

    [Fact]
    public void EconomicTrials_NoScatterBetweenSessions_HasNoBest() => Assert.Null(EconomicTrials.PerSession(60, 0.1, 0, 2.6));
}
