using Tarry.Statistics.Descriptives;
using Tarry.Statistics.Distributions;

namespace Tarry.Statistics.Drift;

/// <summary>Whether neighbouring trials are alike: the portmanteau test of G. M. Ljung and G. E. P. Box (Biometrika 65, 1978).</summary>
public static class LjungBox
{
    /// <summary>Q = n(n + 2) sum r_k^2/(n - k), chi-squared on as many degrees of freedom as lags.</summary>
    /// <param name="inOrder">The values in capture order, more than <paramref name="lags"/>, finite.</param>
    /// <param name="lags">How many lags.</param>
    /// <returns>Q and its p; a p of 1 where every value is the same.</returns>
    /// <exception cref="ArgumentException">There are too few values, or one is not finite.</exception>
    /// <exception cref="ArgumentOutOfRangeException">There is no lag.</exception>
    public static StatisticTest Test(ReadOnlySpan<double> inOrder, int lags = 20)
    {
        Argument.RequireAtLeast(lags, 1, nameof(lags), "20 is usual for sessions of hundreds of trials.");
        Argument.RequireCount(inOrder, lags + 1, nameof(inOrder));
        if (inOrder.IndexOfAnyExcept(inOrder[0]) < 0)
        {
            return new StatisticTest(0, 1);
        }

        var n = (double)inOrder.Length;
        var autocorrelations = Autocorrelation.UpToLag(inOrder, lags);
        var sum = 0.0;
        for (var lag = 1; lag <= lags; lag++)
        {
            sum += autocorrelations[lag - 1] * autocorrelations[lag - 1] / (n - lag);
        }

        var statistic = n * (n + 2) * sum;
        return new StatisticTest(statistic, ChiSquaredDistribution.UpperTail(statistic, lags));
    }
}
