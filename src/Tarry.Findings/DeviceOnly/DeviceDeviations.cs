using Tarry.Findings.Conditions;
using Tarry.Metrology;
using Tarry.Statistics.Distributions;

namespace Tarry.Findings.DeviceOnly;

/// <summary>The standard deviation of every device alone: var L - var R + T^2/12 within sittings.</summary>
/// <remarks>
/// The interval is of the variance, t over sittings, and its square root is taken at the end: the difference can be near zero,
/// where a logarithm cannot go. To pool how it scatters over conditions of different size it is measured in units of what
/// trials within the sessions explain, and moderated as other session values are (<see cref="SessionScatter"/>).
/// </remarks>
internal sealed class DeviceDeviations
{
    private const double OneSidedLevel = 0.95;
    private readonly IReadOnlyDictionary<string, IReadOnlyList<SittingPair>> conditions;
    private readonly double slotVariance;
    private readonly SessionScatter scatter;

    public DeviceDeviations(IReadOnlyDictionary<string, IReadOnlyList<SittingPair>> conditions, double slotMs)
    {
        this.conditions = conditions;
        slotVariance = slotMs * slotMs / 12;
        scatter = new SessionScatter(conditions.Where(entry => entry.Value.Count > 0).ToDictionary(
            entry => entry.Key,
            entry => ((IReadOnlyDictionary<string, double>)InUnits(entry.Value), true)));
    }

    public EstimateOutcome<LatencyDifference> Of(string condition)
    {
        var pairs = conditions[condition];
        if (pairs.Count == 0)
        {
            return new NotEnough<LatencyDifference>(0, 1, "sittings in which the reference and the condition are sound");
        }

        var variance = pairs.Average(pair => pair.VarianceDifference) + slotVariance;
        var (error, degreesOfFreedom, method) = scatter.Of(condition) is { } found
            ? (Unit(pairs) * Math.Sqrt((found.Variance > 0 ? found.Variance : 1) / pairs.Count), found.DegreesOfFreedom, MethodName.ModeratedVarianceDifference)
            : (Unit(pairs), double.PositiveInfinity, MethodName.VarianceDifferenceWithinSession);
        var trials = pairs.Sum(pair => pair.Trials);
        if (variance <= 0)
        {
            var beyond = StudentDistribution.Quantile(OneSidedLevel, degreesOfFreedom) * error;
            return new AtMost<LatencyDifference>(LatencyDifference.FromMilliseconds(Math.Sqrt(beyond)), OneSidedLevel, method, trials, pairs.Count);
        }

        var half = StudentDistribution.Quantile(1 - ((1 - Estimates.Level) / 2), degreesOfFreedom) * error;
        return Estimates.Difference(
            Math.Sqrt(variance),
            Math.Sqrt(Math.Max(0, variance - half)),
            Math.Sqrt(variance + half),
            method,
            trials,
            pairs.Count);
    }

    private static double Unit(IReadOnlyList<SittingPair> pairs) => Math.Sqrt(pairs.Average(pair => pair.VarianceWithin));

    private static SortedDictionary<string, double> InUnits(IReadOnlyList<SittingPair> pairs)
    {
        var unit = Unit(pairs);
        return new(pairs.ToDictionary(pair => pair.Sitting, pair => unit > 0 ? pair.VarianceDifference / unit : 0), StringComparer.Ordinal);
    }
}
