namespace Tarry.Statistics.Planning;

/// <summary>How many trials a session should have where a session and a trial each have their price.</summary>
/// <remarks>
/// The variance (s_b^2 + s_w^2/n)/J at the cost J (c_session + n c_trial) is least at n = sqrt(c_session/c_trial) s_w/s_b:
/// the best allocation of two-stage sampling (W. G. Cochran, Sampling Techniques, 3rd ed., 1977, 10.6, from memory).
/// </remarks>
public static class EconomicTrials
{
    /// <summary>The best number of trials a session; null where sessions do not scatter, so that longer ones are always better.</summary>
    /// <param name="sessionCost">What a session costs beyond its trials, above 0.</param>
    /// <param name="trialCost">What a trial costs, above 0, in the same unit.</param>
    /// <param name="sessionSd">The standard deviation between sessions, 0 or more.</param>
    /// <param name="trialSd">The standard deviation within a session, 0 or more.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    public static double? PerSession(double sessionCost, double trialCost, double sessionSd, double trialSd)
    {
        Argument.RequirePositive(sessionCost, nameof(sessionCost));
        Argument.RequirePositive(trialCost, nameof(trialCost));
        Argument.RequireNotNegative(sessionSd, nameof(sessionSd));
        Argument.RequireNotNegative(trialSd, nameof(trialSd));
        return sessionSd == 0 ? null : Math.Sqrt(sessionCost / trialCost) * trialSd / sessionSd;
    }
}
