using Tarry.Findings.Conditions;
using Tarry.Metrology;
using Tarry.Statistics.Descriptives;

namespace Tarry.Findings.Plans;

/// <summary>What the sessions of a study say of the scatter that a plan must reckon with.</summary>
/// <param name="SessionSdMs">Between sessions of a condition, what trials explain taken away.</param>
/// <param name="OwnSessionSdMs">The part that the conditions of a sitting do not share.</param>
/// <param name="TrialSdMs">Within a session, the root mean square over conditions.</param>
/// <param name="Sessions">On how many sessions this rests.</param>
internal sealed record MeasuredVariances(double? SessionSdMs, double? OwnSessionSdMs, double? TrialSdMs, int Sessions)
{
    /// <summary>From findings; sessions that a caution keeps out of the pool do not count.</summary>
    public static MeasuredVariances Of(FindingsDocument document)
    {
        var conditions = document.Conditions
            .Select(condition => condition.Sessions
                .Where(session => session is { InPool: true, Mean: Estimate<Latency>, StandardDeviation: not null })
                .ToDictionary(session => session.Key.Sitting, Session.Of))
            .Where(sessions => sessions.Count > 0)
            .ToList();
        var all = conditions.SelectMany(sessions => sessions.Values).ToList();
        if (all.Count == 0)
        {
            return new MeasuredVariances(null, null, null, 0);
        }

        var explained = all.Average(session => session.Variance / session.Trials);
        var between = Pooled(conditions.Select(sessions => sessions.Values.Select(session => session.MeanMs).ToArray()));
        var own = Pooled(Pairs(conditions)) / 2;
        return new MeasuredVariances(
            Sd(between - explained),
            Sd((own ?? between) - explained),
            Math.Sqrt(conditions.Average(sessions => sessions.Values.Average(session => session.Variance))),
            all.Count);
    }

    private static double? Sd(double? variance) => variance is { } known ? Math.Sqrt(Math.Max(0, known)) : null;

    private static IEnumerable<double[]> Pairs(List<Dictionary<string, Session>> conditions) => conditions
        .SelectMany((a, index) => conditions.Skip(index + 1).Select(b => a
            .Where(session => b.ContainsKey(session.Key))
            .Select(session => session.Value.MeanMs - b[session.Key].MeanMs)
            .ToArray()));

    private static double? Pooled(IEnumerable<double[]> groups)
    {
        var scattered = groups.Where(group => group.Length >= 2).ToList();
        return scattered.Count == 0
            ? null
            : scattered.Sum(group => (group.Length - 1) * Moments.Variance(group)) / scattered.Sum(group => group.Length - 1);
    }

    private sealed record Session(double MeanMs, double Variance, long Trials)
    {
        public static Session Of(SessionFinding finding)
        {
            var mean = (Estimate<Latency>)finding.Mean;
            var sd = finding.StandardDeviation!.Value.Milliseconds;
            return new Session(mean.Value.Milliseconds, sd * sd, mean.Trials);
        }
    }
}
