using Tarry.Metrology;
using Tarry.Statistics.Drift;

namespace Tarry.Statistics.Tests.Drift;

public sealed class RankCusumTests
{
    // numpy and scipy: ranks, batch means, cumulative sum, and Kolmogorov's law averaged over chi-squared by quadrature.
    [Fact]
    public void Test_SessionWithAShift_AgreesWithSciPy()
    {
        var values = Session(new SeededGenerator(61), 1500, 0.6);
        var expected = OutsideProgram.SciPy(
            """
            r = stats.rankdata(x); n = x.size; k = n // 25; b = r.reshape(25, k).mean(1)
            s = np.sqrt(np.mean(np.diff(b)**2) / 2 * k)
            c = np.abs(np.cumsum(r - r.mean())); S = c.max() / (s*np.sqrt(n)); i = c.argmax() + 1
            from scipy.integrate import quad
            P = quad(lambda c: stats.kstwobign.sf(S*np.sqrt(c/20))*stats.chi2.pdf(c, 20), 0, 200, limit=500, epsabs=1e-14)[0]
            p(S, P, i, x[i:].mean() - x[:i].mean())
            """,
            values);
        var change = RankCusum.Test(values);
        Close.Relative(expected[0], change.Statistic, 1e-10);
        Close.Relative(expected[1], change.P, 1e-6);
        Assert.Equal(expected[2], change.Index);
        Close.Relative(expected[3], change.Shift, 1e-10);
    }

    // A jump of 0.8 in the middle of 8 + 4 + normal 0.3: found where it is, to within a tenth of the session.
    [Fact]
    public void Test_Jump_IsFoundWhereItIs()
    {
        var generator = new SeededGenerator(67);
        var (found, near) = (0, 0);
        for (var repetition = 0; repetition < 100; repetition++)
        {
            var change = RankCusum.Test(Session(generator, 1500, 0.8));
            found += change.P < 0.01 ? 1 : 0;
            near += Math.Abs(change.Index - 600) < 150 ? 1 : 0;
        }

        // Simulation of the method elsewhere: power 0.98.
        Assert.True(found >= 85, $"found {found}");
        Assert.True(near >= 85, $"near {near}");
    }

    [Fact]
    public void Test_SteadySessions_AreSeldomAccused()
    {
        var generator = new SeededGenerator(71);
        var accused = 0;
        for (var repetition = 0; repetition < 500; repetition++)
        {
            accused += RankCusum.Test(Session(generator, 1000, 0)).P < 0.01 ? 1 : 0;
        }

        Close.Share(0.01, accused, 500);
    }

    [Fact]
    public void Test_MonotoneTransform_KeepsTheStatistic()
    {
        var values = Session(new SeededGenerator(73), 400, 0.5);
        var transformed = values.Select(v => Math.Exp(v / 4)).ToArray();
        Assert.Equal(RankCusum.Test(values).Statistic, RankCusum.Test(transformed).Statistic);
    }

    [Fact]
    public void Test_Reversed_HasTheOppositeShift()
    {
        var values = Session(new SeededGenerator(79), 500, 0.8);
        var forward = RankCusum.Test(values);
        Array.Reverse(values);
        var backward = RankCusum.Test(values);
        Close.Relative(forward.Statistic, backward.Statistic, 1e-10);
        Assert.Equal(500 - forward.Index, backward.Index);
        Close.Relative(-forward.Shift, backward.Shift, 1e-10);
    }

    private static double[] Session(SeededGenerator generator, int count, double jump)
    {
        var values = new double[count];
        for (var i = 0; i < count; i++)
        {
            values[i] = (8 * generator.NextDouble()) + (4 * generator.NextDouble()) + (0.3 * generator.NextNormal());
            values[i] += i >= 0.4 * count ? jump : 0;
        }

        return values;
    }

    // Every batch of four holds both values twice, so no batch differs in level from another.
    [Fact]
    public void Test_APatternThatRepeats_HasNoChange() =>
        Assert.Equal(1, RankCusum.Test([.. Enumerable.Range(0, 100).Select(i => 5.0 + (i % 2))]).P);
}
