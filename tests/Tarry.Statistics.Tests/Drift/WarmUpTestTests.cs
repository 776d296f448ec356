using Tarry.Metrology;
using Tarry.Statistics.Drift;

namespace Tarry.Statistics.Tests.Drift;

public sealed class WarmUpTestTests
{
    // numpy and scipy: ranks, weights, batch means and Student's law.
    [Fact]
    public void Of_ASessionThatWarmsUp_AgreesWithSciPy()
    {
        var values = Session(new SeededGenerator(71), 1200, 0.8);
        var expected = OutsideProgram.SciPy(
            """
            r = stats.rankdata(x); n = x.size; b = r.reshape(60, n // 60).mean(1)
            s = np.sqrt(np.mean(np.diff(b)**2) / 2 * (n // 60))
            w = np.exp(-5*(np.arange(n) + 0.5)/n); w = w - w.mean()
            z = w @ r / (s*np.sqrt(w @ w))
            p(z, 2*stats.t.sf(abs(z), 2*59**2/(3*60 - 4)))
            """,
            values);
        var test = WarmUpTest.Of(values);
        Close.Relative(expected[0], test.Statistic, 1e-10);
        Close.Relative(expected[1], test.P, 1e-9);
    }

    [Fact]
    public void Of_FreeTrials_RejectsAtItsLevel()
    {
        const int repetitions = 4000;
        var generator = new SeededGenerator(73);
        var rejected = Enumerable.Range(0, repetitions).Count(_ => WarmUpTest.Of(Session(generator, 300, 0)).P < 0.01);
        Assert.InRange(rejected / (double)repetitions, 0.01 - (3 * Math.Sqrt(0.01 * 0.99 / repetitions)), 0.01 + (3 * Math.Sqrt(0.01 * 0.99 / repetitions)));
    }

    [Fact]
    public void Of_BatchesThatAreAllAlike_TellsNothing() =>
        Assert.Equal(1, WarmUpTest.Of([.. Enumerable.Range(0, 600).Select(i => (double)(i % 10))]).P);

    private static double[] Session(SeededGenerator random, int trials, double warmUpMs)
    {
        var values = new double[trials];
        for (var i = 0; i < trials; i++)
        {
            values[i] = (8 * random.NextDouble()) + (4.1 * random.NextDouble()) + (0.3 * random.NextNormal()) + (warmUpMs * Math.Exp(-5.0 * i / trials));
        }

        return values;
    }
}
