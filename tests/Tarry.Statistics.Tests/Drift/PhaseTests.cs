using Tarry.Metrology;
using Tarry.Statistics.Drift;

namespace Tarry.Statistics.Tests.Drift;

public sealed class PhaseTests
{
    // J. H. Zar, Biostatistical Analysis, worked example of eight angles (data as listed by the pycircstat2 sources);
    // p by Zar's approximation and V* by Stephens's, computed from those formulas in R.
    [Fact]
    public void RayleighAndKuiper_ZarsAngles_AgreeWithTheWorkedExample()
    {
        double[] phases = [45 / 360.0, 55 / 360.0, 81 / 360.0, 96 / 360.0, 110 / 360.0, 117 / 360.0, 132 / 360.0, 154 / 360.0];
        var test = RayleighTest.Of(phases);
        Close.Relative(0.82521774482, test.ResultantLength, 1e-10);
        Close.Relative(98.9877519504, 360 * test.MeanPhase, 1e-10);
        Close.Relative(0.00185163750772, test.P, 1e-9);
        Close.Relative(2.13927295711, KuiperTest.Of(phases).Statistic, 1e-10);
    }

    [Fact]
    public void Rayleigh_NearUniformAngles_AgreesWithR() =>
        Close.Relative(0.281130481938, RayleighTest.Of([10 / 360.0, 100 / 360.0, 190 / 360.0, 280 / 360.0, 55 / 360.0, 350 / 360.0]).ResultantLength, 1e-10);

    // The 5 % and 1 % points of V* are 1.747 and 2.001 (M. A. Stephens 1970, table 1; E. S. Pearson, H. O. Hartley,
    // Biometrika Tables 2, from memory).
    [Fact]
    public void Kuiper_UniformPhases_RejectsAtItsLevel()
    {
        const int repetitions = 2000;
        var generator = new SeededGenerator(83);
        var phases = new double[200];
        var (five, printed, rayleigh) = (0, 0, 0);
        for (var repetition = 0; repetition < repetitions; repetition++)
        {
            for (var i = 0; i < phases.Length; i++)
            {
                phases[i] = generator.NextDouble();
            }

            var test = KuiperTest.Of(phases);
            five += test.P < 0.05 ? 1 : 0;
            printed += test.Statistic > 1.747 ? 1 : 0;
            rayleigh += RayleighTest.Of(phases).P < 0.05 ? 1 : 0;
        }

        Close.Share(0.05, five, repetitions, slack: 0.002);
        Close.Share(0.05, rayleigh, repetitions, slack: 0.002);
        Assert.InRange(Math.Abs(five - printed), 0, 4);
    }

    [Fact]
    public void Tests_PhasesMovedByWholeCycles_DoNotChange()
    {
        double[] phases = [0.1, 0.25, 0.3, 0.9];
        double[] moved = [5.1, -0.75, 2.3, -3.1];
        Close.Absolute(RayleighTest.Of(phases).P, RayleighTest.Of(moved).P, 1e-12);
        Close.Absolute(KuiperTest.Of(phases).Statistic, KuiperTest.Of(moved).Statistic, 1e-12);
    }

    // Kuiper's V does not depend on where the cycle is said to begin.
    [Fact]
    public void Kuiper_Rotated_DoesNotChange()
    {
        double[] phases = [0.1, 0.25, 0.3, 0.9, 0.42];
        var rotated = phases.Select(phase => phase + 0.37).ToArray();
        Close.Absolute(KuiperTest.Of(phases).Statistic, KuiperTest.Of(rotated).Statistic, 1e-12);
    }

    [Fact]
    public void Rayleigh_AllPhasesAlike_IsFullyLocked()
    {
        var test = RayleighTest.Of(Enumerable.Repeat(0.98, 50).ToArray());
        Close.Absolute(1, test.ResultantLength, 1e-12);
        Close.Absolute(0.98, test.MeanPhase, 1e-12);
        Assert.True(test.P < 1e-20);
    }
}
