using Tarry.Statistics.Descriptives;

namespace Tarry.Statistics.Deconvolution;

/// <summary>Takes shifts between sittings out of a condition and its reference, so that they do not blur a pooled density.</summary>
/// <remarks>
/// Both are shifted by the sitting's reference mean less the mean of these. What the condition's sessions then still differ by,
/// e = d - mean d of differences of means d, is taken out in part: the share s = max(0, 1 - w / var d), w what trials within the
/// sessions explain of var d, so that chance differences are left where they are (W. James and C. Stein, Proc. 4th Berkeley
/// Symp. 1 (1961), from memory). The mean of all is kept.
/// </remarks>
public static class SessionAlignment
{
    /// <summary>Aligns the sessions.</summary>
    /// <param name="latencies">The condition's latencies by sitting.</param>
    /// <param name="references">The reference's in the same order, two or more in each session.</param>
    /// <returns>Both, shifted.</returns>
    /// <exception cref="ArgumentException">There is no session, the numbers of sessions differ, or a session has fewer than two values.</exception>
    public static (IReadOnlyList<double[]> Latencies, IReadOnlyList<double[]> References) Align(
        IReadOnlyList<double[]> latencies,
        IReadOnlyList<double[]> references)
    {
        ArgumentNullException.ThrowIfNull(latencies);
        ArgumentNullException.ThrowIfNull(references);
        Argument.RequireAtLeast(latencies.Count, 1, nameof(latencies), "Give the latencies of at least one session.");
        Argument.RequireSameLength(latencies.Count, references.Count, nameof(latencies), nameof(references));
        var ofReference = references.Select(session => Moments.Mean(session)).ToArray();
        var sitting = ofReference.Average();
        var differences = latencies.Select((session, i) => Moments.Mean(session) - ofReference[i]).ToArray();
        var mean = differences.Average();
        var share = OwnShare(latencies, references, differences);
        return (
            [.. latencies.Select((session, i) => Shifted(session, sitting - ofReference[i] + (share * (mean - differences[i]))))],
            [.. references.Select((session, i) => Shifted(session, sitting - ofReference[i]))]);
    }

    private static double OwnShare(IReadOnlyList<double[]> latencies, IReadOnlyList<double[]> references, double[] differences)
    {
        if (differences.Length < 2 || Moments.Variance(differences) is not (> 0 and var between))
        {
            return 0;
        }

        var within = latencies.Zip(references).Average(pair => VarianceOfMean(pair.First) + VarianceOfMean(pair.Second));
        return Math.Max(0, 1 - (within / between));
    }

    private static double VarianceOfMean(double[] session) => Moments.Variance(session) / session.Length;

    private static double[] Shifted(double[] session, double shift) => Array.ConvertAll(session, value => value + shift);
}
