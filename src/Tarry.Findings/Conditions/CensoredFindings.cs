using Tarry.Findings.Samples;
using Tarry.Metrology;
using Tarry.Statistics.Censoring;

namespace Tarry.Findings.Conditions;

/// <summary>The findings of a condition whose latencies are known as intervals only: every interval holds what the bounds leave open.</summary>
/// <remarks>
/// A quantile or a mean of the true latencies lies between that of the low bounds and that of the high bounds, so its interval reaches from the low
/// end of the one's to the high end of the other's. Quantiles are the middle of the range that the distribution of greatest likelihood
/// gives (<see cref="TurnbullDistribution"/>). A standard deviation is off by half the width of the intervals at most (Minkowski's inequality), p95 - p5 by the
/// whole width. See <c>docs/methods/interval-censoring.md</c>.
/// </remarks>
internal sealed class CensoredFindings
{
    private readonly IReadOnlyList<SessionSample> sessions;
    private readonly PooledSample lows;
    private readonly PooledSample highs;
    private readonly SessionScatter means;
    private readonly TurnbullDistribution distribution;
    private readonly double widestMs;

    private CensoredFindings(IReadOnlyList<SessionSample> sessions, SessionScatter means)
    {
        (this.sessions, this.means) = (sessions, means);
        lows = new PooledSample([.. sessions.Select(session => session.WithLatencies(Bounds(session).Select(bound => bound.Low)))]);
        highs = new PooledSample([.. sessions.Select(session => session.WithLatencies(Bounds(session).Select(bound => bound.High)))]);
        var bounds = sessions.SelectMany(Bounds).ToList();
        widestMs = bounds.Max(bound => bound.High - bound.Low);

        // A press without a response answers later than any, which a quantile must know.
        var missed = Enumerable.Repeat(new CensoredValue(bounds.Max(bound => bound.High), double.PositiveInfinity), lows.Missed);
        distribution = TurnbullDistribution.Of([.. bounds, .. missed]);
    }

    /// <summary>The finding, with what the bounds leave open where any latency is an interval.</summary>
    public static ConditionFinding Of(ConditionFinding finding, IReadOnlyList<SessionSample> sessions, SessionScatter means) =>
        sessions.Any(session => session is { IntervalCensored: true, Latencies.Count: > 0 })
            ? new CensoredFindings(sessions, means).Widen(finding)
            : finding;

    private ConditionFinding Widen(ConditionFinding finding)
    {
        var mean = Between(MeanEstimate.Of(lows, means), MeanEstimate.Of(highs, means), MethodName.MeanBetweenBounds, (low, high) => (low + high) / 2);
        return finding with
        {
            Sessions = [.. finding.Sessions.Select(Session)],
            Mean = mean,
            MeanWithBetweenSessions = MeanEstimate.WithBetweenSessions(mean, means, lows.Sessions) is { } wider ? wider with { Method = MethodName.MeanBetweenBounds } : null,
            Median = Quantile(0.5),
            P05 = Quantile(0.05),
            P25 = Quantile(0.25),
            P75 = Quantile(0.75),
            P95 = Quantile(0.95),
            P99 = Quantile(0.99),
            StandardDeviation = Scale(finding.StandardDeviation, widestMs / 2),
            Spread = Scale(finding.Spread, widestMs),
            LateShare = Late(finding),
        };
    }

    private SessionFinding Session(SessionFinding finding)
    {
        if (sessions.FirstOrDefault(session => session.Key == finding.Key) is not { IntervalCensored: true } session)
        {
            return finding;
        }

        var low = MeanEstimate.WithinOneSession(session.WithLatencies(Bounds(session).Select(bound => bound.Low)));
        var high = MeanEstimate.WithinOneSession(session.WithLatencies(Bounds(session).Select(bound => bound.High)));
        return finding with { Mean = Between(low, high, MethodName.MeanBetweenBounds, (one, other) => (one + other) / 2) };
    }

    private EstimateOutcome<Latency> Quantile(double level)
    {
        var range = distribution.QuantileRange(level);
        return Between(
            QuantileEstimate.Of(lows, level, means),
            QuantileEstimate.Of(highs, level, means),
            MethodName.QuantileBetweenBounds,
            (low, high) => double.IsInfinity(range.High) ? (low + high) / 2 : (range.Low + range.High) / 2);
    }

    private static EstimateOutcome<Latency> Between(EstimateOutcome<Latency> low, EstimateOutcome<Latency> high, string method, Func<double, double, double> value)
    {
        if (low is not Estimate<Latency> below || high is not Estimate<Latency> above)
        {
            return low is Estimate<Latency> ? high : low;
        }

        var (from, to) = (below.Interval.Low, above.Interval.High);
        var middle = Math.Clamp(value(below.Value.Milliseconds, above.Value.Milliseconds), from.Milliseconds, to.Milliseconds);
        return below with { Value = Latency.FromMilliseconds(middle), Interval = new(from, to), Method = method };
    }

    private static EstimateOutcome<LatencyDifference> Scale(EstimateOutcome<LatencyDifference> found, double offMs) =>
        found is Estimate<LatencyDifference> estimate
            ? estimate with
            {
                Interval = new(
                    LatencyDifference.FromMilliseconds(Math.Max(0, estimate.Interval.Low.Milliseconds - offMs)),
                    LatencyDifference.FromMilliseconds(estimate.Interval.High.Milliseconds + offMs)),
                Method = MethodName.ScaleWidenedByBounds,
            }
            : found;

    private EstimateOutcome<Proportion> Late(ConditionFinding finding) =>
        (finding.LateShare, ShareEstimate.Late(lows, finding.LateBeyond), ShareEstimate.Late(highs, finding.LateBeyond)) is
            (Estimate<Proportion> middle, Estimate<Proportion> fewest, Estimate<Proportion> most)
            ? middle with { Interval = new(fewest.Interval.Low, most.Interval.High), Method = MethodName.ShareBetweenBounds }
            : finding.LateShare;

    // A session may lie beside others whose latencies are exact.
    private static IEnumerable<CensoredValue> Bounds(SessionSample session) =>
        session.BoundsMs ?? session.Latencies.InOrder.ToArray().Select(latency => new CensoredValue(latency, latency));
}
