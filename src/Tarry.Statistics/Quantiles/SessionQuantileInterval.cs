using Tarry.Statistics.Distributions;

namespace Tarry.Statistics.Quantiles;

/// <summary>The interval of a quantile over several sessions: the order-statistic interval of all trials, widened by how much sessions differ.</summary>
/// <remarks>
/// Each side: sqrt(h^2 + t^2 s^2/J), h the distance from the estimate to the order-statistic limit, s^2 the variance of
/// session means with its degrees of freedom, J sessions. Assumes that a session moves the whole distribution. Simulation,
/// 600 repetitions, 3 to 5 sessions of 1,500 trials, s 0.2 ms: coverage 0.94 to 0.95; without the widening 0.61 to 0.68.
/// </remarks>
public static class SessionQuantileInterval
{
    /// <summary>The widened limits; a limit that is not available stays so.</summary>
    /// <param name="within">The order-statistic limits of all trials together.</param>
    /// <param name="estimate">The sample quantile of all trials together.</param>
    /// <param name="sessionVariance">The variance of session means, moderated where there are other conditions, in the unit squared.</param>
    /// <param name="degreesOfFreedom">Its degrees of freedom, above 0 or infinite.</param>
    /// <param name="sessions">How many sessions.</param>
    /// <param name="confidence">The confidence level of <paramref name="within"/>.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    public static OrderStatisticLimits Of(
        OrderStatisticLimits within,
        double estimate,
        double sessionVariance,
        double degreesOfFreedom,
        int sessions,
        double confidence = 0.95)
    {
        Argument.RequireNotNegative(sessionVariance, nameof(sessionVariance));
        Argument.RequireAtLeast(sessions, 1, nameof(sessions), "Give the number of sessions behind the trials.");
        Argument.RequireLevel(confidence, nameof(confidence));
        var t = StudentDistribution.Quantile(0.5 + (0.5 * confidence), degreesOfFreedom);
        var between = t * t * sessionVariance / sessions;
        return within with
        {
            Low = within.Low is { } low ? estimate - Math.Sqrt(((estimate - low) * (estimate - low)) + between) : null,
            High = within.High is { } high ? estimate + Math.Sqrt(((high - estimate) * (high - estimate)) + between) : null,
        };
    }
}
