using Tarry.Findings.Conditions;
using Tarry.Findings.Samples;
using Tarry.Metrology;
using Tarry.Statistics.Distributions;
using Tarry.Statistics.Intervals;
using Tarry.Statistics.Play;

namespace Tarry.Findings.Play;

/// <summary>The mean absolute timing error of a condition about the best constant: the mean of its sessions' own.</summary>
internal static class DeviceErrorEstimate
{
    public static EstimateOutcome<LatencyDifference> Of(PlayCondition condition, SessionScatter logs)
    {
        var sessions = WithResponses(condition);
        var values = sessions.Select(session => Of(session, condition.Hits.Median)).ToList();
        var value = values.Average();
        if (sessions.Count == 1)
        {
            return WithinOneSession(sessions[0], condition.Hits.Median, value);
        }

        if (values.All(error => error == 0))
        {
            return Estimates.Difference(0, 0, 0, MethodName.ModeratedLogScale, sessions);
        }

        if (values.Contains(0) || logs.Of(condition.Id) is not { } scatter)
        {
            return new NotEnough<LatencyDifference>(values.Count(error => error > 0), values.Count, "sessions whose latency varies");
        }

        var half = StudentDistribution.Quantile(0.975, scatter.DegreesOfFreedom) * Math.Sqrt(scatter.Variance / sessions.Count);
        return Estimates.Difference(value, value * Math.Exp(-half), value * Math.Exp(half), MethodName.ModeratedLogScale, sessions);
    }

    /// <summary>The scatter of the logarithms of the sessions' errors over all conditions.</summary>
    public static SessionScatter Logs(IReadOnlyList<PlayCondition> conditions) => new(conditions.ToDictionary(
        condition => condition.Id,
        condition => (
            (IReadOnlyDictionary<string, double>)WithResponses(condition)
                .Select(session => (session.Key.Sitting, Error: Of(session, condition.Hits.Median)))
                .Where(session => session.Error > 0)
                .ToDictionary(session => session.Sitting, session => Math.Log(session.Error)),
            condition.InPool)));

    private static List<SessionSample> WithResponses(PlayCondition condition) =>
        [.. condition.Sessions.Where(session => session.Latencies.Count > 0)];

    private static double Of(SessionSample session, double compensation) => TimingError.MeanAbsolute(session.Latencies.Sorted, compensation);

    private static EstimateOutcome<LatencyDifference> WithinOneSession(SessionSample session, double compensation, double value)
    {
        double[] errors = [.. session.Latencies.InOrder];
        if (errors.Length < BatchMeansInterval.SmallestCount)
        {
            return new NotEnough<LatencyDifference>(errors.Length, BatchMeansInterval.SmallestCount, "responses");
        }

        for (var i = 0; i < errors.Length; i++)
        {
            errors[i] = Math.Abs(errors[i] - compensation);
        }

        var limits = BatchMeansInterval.Of(errors, Estimates.Level);
        return Estimates.Difference(value, Math.Max(0, limits.Low), limits.High, MethodName.BatchMeansWithinSession, [session]);
    }
}
