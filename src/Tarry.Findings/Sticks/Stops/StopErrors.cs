using Tarry.Findings.Conditions;
using Tarry.Findings.Sticks.Recordings;
using Tarry.Statistics.Distributions;

namespace Tarry.Findings.Sticks.Stops;

/// <summary>The error at each stop over the sessions of a condition; the largest stated uncertainty of a stop's angle is added in quadrature, since sessions share the jig.</summary>
internal static class StopErrors
{
    /// <summary>The stops by true angle.</summary>
    /// <param name="sessions">The visits of each session.</param>
    public static IReadOnlyList<StopError> Of(IReadOnlyList<SessionStops> sessions) =>
    [
        .. sessions.SelectMany(session => session.Stops.Select(stop => (session.Uncertainty, stop.Degrees, stop.Errors)))
            .GroupBy(visits => visits.Degrees)
            .OrderBy(group => group.Key)
            .Select(group => Of(group.Key, [.. group.Select(visits => visits.Errors)], group.Max(visits => visits.Uncertainty))),
    ];

    private static StopError Of(double degrees, IReadOnlyList<IReadOnlyList<double>> sessions, double uncertainty)
    {
        var stop = NormalDistribution.Quantile(0.5 + (Estimates.Level / 2)) * uncertainty;
        return new StopError(
            degrees,
            sessions.Average(errors => errors.Average()),
            MeanHalfWidth.Of(sessions) is { } half ? Math.Sqrt((half * half) + (stop * stop)) : null,
            sessions.Count,
            sessions.Sum(errors => errors.Count));
    }
}
