using Tarry.Findings.Conditions;
using Tarry.Findings.Samples;
using Tarry.Metrology;
using Tarry.Statistics.Components;
using Tarry.Statistics.Distributions;
using Tarry.Studies.Calibrations;
using Tarry.Studies.Sessions;

namespace Tarry.Findings.Budgets;

/// <summary>Makes the budgets of conditions and of differences.</summary>
internal sealed class ConditionBudgets(
    IReadOnlyList<SessionSample> samples,
    IReadOnlyDictionary<string, RigCalibration> calibrations,
    SessionScatter means)
{
    private const int BatchDegreesOfFreedom = 19;

    /// <summary>What stands between the truth and each session's latencies.</summary>
    public IReadOnlyDictionary<SessionKey, SessionChain> Chains { get; } = samples
        .Where(sample => sample.Latencies.Count > 0)
        .ToDictionary(sample => sample.Key, sample => new SessionChain(sample, calibrations));

    /// <summary>The budget of a condition; null where it has no response.</summary>
    public ConditionBudget? Of(ConditionFinding finding)
    {
        var sessions = samples.Where(sample => sample.Key.Condition == finding.Id && sample.Latencies.Count > 0).ToList();
        if (sessions.Count == 0)
        {
            return null;
        }

        var chains = sessions.ConvertAll(session => Chains[session.Key]);
        var inputs = ConditionChain.Together(chains);
        var components = sessions.Count >= 2 && sessions.Any(session => session.Latencies.Count >= 2)
            ? OneWayComponents.Of([.. sessions.Select(session => session.Latencies.InOrder.ToArray())])
            : null;
        var many = means.Of(finding.Id)?.DegreesOfFreedom;
        var ofMean = many ?? (finding.MeanWithBetweenSessions is null ? BatchDegreesOfFreedom : means.PooledDegreesOfFreedom);
        var ofQuantile = many ?? double.PositiveInfinity;
        return new ConditionBudget(
            chains.TrueForAll(chain => chain.IsCalibrated),
            inputs,
            Deviation(components?.Between),
            Deviation(components?.Within),
            Absolute(finding.MeanWithBetweenSessions ?? finding.Mean, ofMean, inputs),
            Absolute(finding.Median, ofQuantile, inputs),
            Absolute(finding.P05, ofQuantile, inputs),
            Absolute(finding.P95, ofQuantile, inputs),
            Absolute(finding.P99, ofQuantile, inputs));
    }

    /// <summary>The longer side of the sampling interval, divided by the factor that made it, is its standard uncertainty.</summary>
    private static AbsoluteLatency? Absolute(EstimateOutcome<Latency> outcome, double degreesOfFreedom, IReadOnlyList<BudgetInput> inputs)
    {
        if (outcome is not Estimate<Latency> estimate)
        {
            return null;
        }

        var value = estimate.Value.Milliseconds;
        var side = Math.Max(value - estimate.Interval.Low.Milliseconds, estimate.Interval.High.Milliseconds - value);
        var sampling = side / StudentDistribution.Quantile((1 + estimate.Level) / 2, degreesOfFreedom);
        return AbsoluteLatency.Of(value, StatedUncertainty.Of(
            -inputs.Where(input => input.Unit == "us").Sum(input => input.Estimate) / 1000,
            [
                .. inputs.Select(input =>
                {
                    var sensitivity = ConditionChain.Sensitivity(input, value);
                    return new BudgetContribution(input.Source, sensitivity, Math.Abs(sensitivity) * input.StandardUncertainty, input.DegreesOfFreedom, false);
                }),
                new BudgetContribution(UncertaintySource.Sampling, 1, sampling, degreesOfFreedom, false),
            ]));
    }

    private static LatencyDifference? Deviation(double? variance) =>
        variance is { } found ? LatencyDifference.FromMilliseconds(Math.Sqrt(found)) : null;
}
