using Tarry.Findings.Samples;
using Tarry.Statistics.Descriptives;

namespace Tarry.Findings.Quality;

/// <summary>Tells a gradual change in a session from an abrupt one, once it is known that there is one.</summary>
/// <remarks>
/// Least squares on 40 batch means: a step at any batch against a line and three exponential approaches
/// (time constants of 1/8, 1/4 and 1/2 of the session); the smaller residual sum names it.
/// </remarks>
internal static class ChangeInSession
{
    private const int Batches = 40;
    private static readonly double[] TimeConstants = [0.125, 0.25, 0.5];

    public static Caution Describe(SessionSample session, int changeAt)
    {
        var means = BatchMeans(session.Latencies.InOrder);
        var step = Enumerable.Range(2, Batches - 3)
            .Select(at => Fit(means, i => i >= at ? 1 : 0))
            .MinBy(fit => fit.ResidualSum);
        var gradual = TimeConstants
            .Select(tau => Fit(means, i => Approach((i + 0.5) / Batches, tau)))
            .Append(Fit(means, i => (i + 0.5) / Batches))
            .MinBy(fit => fit.ResidualSum);
        var subject = session.Key.ToString();
        return gradual.ResidualSum <= step.ResidualSum
            ? new Caution(CautionKind.Drift, subject, new Dictionary<string, double> { ["drift_ms"] = gradual.Size })
            : new Caution(CautionKind.ChangePoint, subject, new Dictionary<string, double>
            {
                ["step_ms"] = step.Size,
                ["sequence"] = session.Sequences[changeAt],
            });
    }

    private static double Approach(double time, double tau) => (1 - Math.Exp(-time / tau)) / (1 - Math.Exp(-1 / tau));

    private static double[] BatchMeans(ReadOnlySpan<double> inOrder)
    {
        var means = new double[Batches];
        for (var i = 0; i < Batches; i++)
        {
            var from = (int)((long)i * inOrder.Length / Batches);
            var to = (int)((long)(i + 1) * inOrder.Length / Batches);
            means[i] = Moments.Mean(inOrder[from..to]);
        }

        return means;
    }

    private static (double Size, double ResidualSum) Fit(double[] values, Func<int, double> regressor)
    {
        var x = Enumerable.Range(0, values.Length).Select(regressor).ToArray();
        var meanX = x.Average();
        var meanY = values.Average();
        var slope = x.Zip(values, (a, b) => (a - meanX) * (b - meanY)).Sum() / x.Sum(a => (a - meanX) * (a - meanX));
        var residual = x.Zip(values, (a, b) => b - meanY - (slope * (a - meanX))).Sum(r => r * r);
        return (slope, residual);
    }
}
