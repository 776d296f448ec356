using Tarry.Findings.Conditions;
using Tarry.Metrology;
using Tarry.Statistics.Intervals;
using Tarry.Statistics.Quantiles;
using Tarry.Statistics.Shapes;

namespace Tarry.Findings.Shapes;

/// <summary>From the fits of a condition to what is found of its late responses.</summary>
internal static class LateTails
{
    private const double ExtremeLevel = 0.999;
    private const double TwoSided = 1.96;

    public static LateTailFinding Of(FittedCondition? fitted, PooledSample pool, SessionScatter means)
    {
        var extreme = QuantileEstimate.Of(pool, ExtremeLevel, means);
        if (fitted is null)
        {
            return new LateTailFinding
            {
                ShareByFit = new NotEnough<Proportion>(pool.Sorted.Length, ConditionShapes.FewestResponses, "responses"),
                BlockEnd = null,
                LumpInterval = null,
                Lumps = [],
                P999 = extreme,
            };
        }

        var end = fitted.BlockEndMs;
        var values = fitted.InCommonPlace().SelectMany(session => session).Where(value => value > end).Order().ToArray();
        var lumps = RegularLumps.Of(fitted.Main, end, values);
        return new LateTailFinding
        {
            ShareByFit = ShareByFit(fitted),
            BlockEnd = Latency.FromMilliseconds(end),
            LumpInterval = lumps is null ? null : Estimates.Difference(
                lumps.IntervalMs,
                Math.Max(0, lumps.IntervalMs - (TwoSided * lumps.StandardErrorMs)),
                lumps.IntervalMs + (TwoSided * lumps.StandardErrorMs),
                MethodName.LumpsOfLateResponses,
                fitted.Sessions),
            Lumps = lumps is null ? [] : [.. Enumerable.Range(1, lumps.Multiples).Select(k => Lump(fitted, lumps, k, values))],
            P999 = extreme,
        };
    }

    private static Estimate<Proportion> ShareByFit(FittedCondition fitted)
    {
        var best = fitted.Choice.Best;
        var (low, high) = best.LateShareLimits();
        return Estimates.Share(best.LateShare, low, high, MethodName.LateShareByFit, fitted.Trials, fitted.Sessions.Count);
    }

    // Each late response counts to the multiple whose middle is nearest.
    private static LateLump Lump(FittedCondition fitted, RegularLumps lumps, int multiple, double[] late)
    {
        var half = 0.5 * Math.Min(lumps.IntervalMs, fitted.BlockEndMs - fitted.Main.Quantile(1e-4));
        var middle = 0.5 * (fitted.BlockEndMs + fitted.Main.Quantile(1e-4)) + (multiple * lumps.IntervalMs);
        var count = late.Count(value => Math.Abs(value - middle) <= half);
        var limits = ClopperPearsonInterval.Of(count, fitted.Trials, Estimates.Level);
        return new LateLump(
            multiple,
            LatencyDifference.FromMilliseconds(multiple * lumps.IntervalMs),
            count,
            Estimates.Share((double)count / fitted.Trials, limits.Low, limits.High, MethodName.LumpShare, fitted.Trials, fitted.Sessions.Count));
    }
}
