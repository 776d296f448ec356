using Tarry.Metrology;
using Tarry.Statistics.Descriptives;
using Tarry.Statistics.Quantiles;

namespace Tarry.Statistics.Tests.Quantiles;

public sealed class SessionQuantileIntervalTests
{
    // By hand: sides 3 and 4, widened by t s/sqrt J = 1.959964 * 2/sqrt 4 on infinite degrees of freedom.
    [Fact]
    public void Of_KnownSides_AddsInQuadrature()
    {
        var within = new OrderStatisticLimits(new OrderStatisticRanks(1, 2, 10, 0.95), 7, 14);
        var limits = SessionQuantileInterval.Of(within, 10, 4, double.PositiveInfinity, 4);
        Close.Absolute(10 - Math.Sqrt(9 + (1.959964 * 1.959964)), limits.Low!.Value, 1e-6);
        Close.Absolute(10 + Math.Sqrt(16 + (1.959964 * 1.959964)), limits.High!.Value, 1e-6);
    }

    [Fact]
    public void Of_LimitAmongTheMisses_StaysNotAvailable() =>
        Assert.Null(SessionQuantileInterval.Of(new OrderStatisticLimits(new OrderStatisticRanks(1, 9, 10, 0.95), 7, null), 8, 1, 5, 3).High);

    // Uniform trials 0 to 10 in three sessions, each moved by a normal offset of sd 0.3; the variance of session means comes
    // from 24 such conditions, as in a study. The plain interval of 3,000 trials covers the median in about 0.8 only.
    [Fact]
    public void Of_SessionsThatDiffer_CoversWhereTrialsAloneDoNot()
    {
        const int repetitions = 400;
        var generator = new SeededGenerator(101);
        var (widened, plain) = (0, 0);
        var trials = new double[3000];
        var means = new double[3];
        for (var repetition = 0; repetition < repetitions; repetition++)
        {
            for (var session = 0; session < 3; session++)
            {
                var offset = 0.3 * generator.NextNormal();
                for (var i = 0; i < 1000; i++)
                {
                    trials[(1000 * session) + i] = (10 * generator.NextDouble()) + offset;
                }
            }

            var pooled = 0.0;
            for (var condition = 0; condition < 24; condition++)
            {
                for (var session = 0; session < 3; session++)
                {
                    means[session] = (0.3 * generator.NextNormal()) + (Math.Sqrt(100.0 / 12 / 1000) * generator.NextNormal());
                }

                pooled += Moments.Variance(means) / 24;
            }

            Array.Sort(trials);
            var within = OrderStatisticInterval.Of(trials, 0.5);
            var limits = SessionQuantileInterval.Of(within, SampleQuantile.Of(trials, 0.5)!.Value, pooled, 48, 3);
            plain += within.Low <= 5 && 5 <= within.High ? 1 : 0;
            widened += limits.Low <= 5 && 5 <= limits.High ? 1 : 0;
        }

        Close.Share(0.97, widened, repetitions, slack: 0.01);
        Assert.True(plain < 0.9 * repetitions, $"plain {plain}");
    }
}
