using Tarry.Metrology;
using Tarry.Statistics.Descriptives;
using Tarry.Statistics.Distributions;
using Tarry.Statistics.SlotGrid;

namespace Tarry.Findings.ReportIntervals;

/// <summary>The fixed delay over sittings, with a t interval: sessions are the unit.</summary>
internal static class FixedDelayEstimate
{
    public static EstimateOutcome<Latency>? Of(ReportIntervalFound found)
    {
        var bySitting = found.Series
            .Where(series => series.FixedDelayMs is not null)
            .GroupBy(series => series.Sitting, StringComparer.Ordinal)
            .Select(sitting => sitting.Average(series => series.FixedDelayMs!.Value))
            .ToArray();
        if (bySitting.Length == 0)
        {
            return null;
        }

        if (bySitting.Length == 1)
        {
            return new NotEnough<Latency>(1, 2, "sittings");
        }

        var mean = bySitting.Average();
        var half = StudentDistribution.Quantile(0.975, bySitting.Length - 1) * Moments.StandardDeviation(bySitting) / Math.Sqrt(bySitting.Length);
        return new Estimate<Latency>(
            Latency.FromMilliseconds(mean),
            new(Latency.FromMilliseconds(mean - half), Latency.FromMilliseconds(mean + half)),
            0.95,
            MethodName.FixedDelayOfTwoGrids,
            found.Trials,
            bySitting.Length);
    }
}
