using Tarry.Findings.Samples;
using Tarry.Statistics.Descriptives;

namespace Tarry.Findings.DeviceOnly;

/// <summary>The sessions of a condition and of the reference in one sitting.</summary>
internal sealed record SittingPair(string Sitting, SessionSample Condition, SessionSample Reference)
{
    public int Trials => Condition.Latencies.Count + Reference.Latencies.Count;

    /// <summary>Variance of the condition less that of the reference, ms squared.</summary>
    public double VarianceDifference => Variance(Condition) - Variance(Reference);

    /// <summary>How much trials within the two sessions explain of the variance of <see cref="VarianceDifference"/>, ms to the fourth.</summary>
    /// <remarks>(m4 - m2^2)/n of each (H. Cramér, Mathematical Methods of Statistics (1946), 27.4, from memory).</remarks>
    public double VarianceWithin => OfVariance(Condition) + OfVariance(Reference);

    public static double Variance(SessionSample session) => Moments.Variance(session.Latencies.InOrder);

    private static double OfVariance(SessionSample session)
    {
        var latencies = session.Latencies.InOrder;
        var mean = Moments.Mean(latencies);
        double second = 0, fourth = 0;
        foreach (var latency in latencies)
        {
            var square = (latency - mean) * (latency - mean);
            second += square / latencies.Length;
            fourth += square * square / latencies.Length;
        }

        return (fourth - (second * second)) / latencies.Length;
    }
}
