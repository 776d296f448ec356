using Tarry.Statistics.Distributions;

namespace Tarry.Statistics.Planning;

/// <summary>How many trials a session needs so that the interval of a mean over sessions comes out no wider than wanted.</summary>
/// <remarks>
/// Half-width t sqrt(s^2/J), where s^2 estimates s_b^2 + s_w^2/n on df degrees of freedom. With the assurance A it is at most
/// t f sqrt((s_b^2 + s_w^2/n)/J), f = sqrt(chi2_A(df)/df); solved for n: s_w^2 / [J (H/(t f))^2 - s_b^2]. Where the bracket is
/// not above 0, more trials cannot help (F. A. Graybill, Biometrika 45, 1958, for the idea of assurance, from memory).
/// Assumes normal session means.
/// </remarks>
public static class HalfWidthPlan
{
    /// <summary>Trials a session, or null where no number of them suffices.</summary>
    /// <param name="halfWidth">The half-width wanted, above 0, in the unit of the standard deviations.</param>
    /// <param name="sessions">How many sessions, 1 or more.</param>
    /// <param name="sessionSd">The standard deviation between sessions, 0 or more.</param>
    /// <param name="trialSd">The standard deviation within a session, 0 or more.</param>
    /// <param name="degreesOfFreedom">Of the variance estimate: sessions less 1, or more where it is pooled over conditions.</param>
    /// <param name="assurance">How likely the half-width comes out no wider.</param>
    /// <param name="level">The confidence level.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    public static double? TrialsPerSession(double halfWidth, int sessions, double sessionSd, double trialSd, double degreesOfFreedom, double assurance = 0.80, double level = 0.95)
    {
        Argument.RequirePositive(halfWidth, nameof(halfWidth));
        Require(sessions, sessionSd);
        Argument.RequireNotNegative(trialSd, nameof(trialSd));
        var wanted = halfWidth / ErrorsAssured(degreesOfFreedom, assurance, level);
        var left = (sessions * wanted * wanted) - (sessionSd * sessionSd);
        return left > 0 ? trialSd * trialSd / left : null;
    }

    /// <summary>The half-width that is assured with endless trials: what more presses cannot go below.</summary>
    /// <inheritdoc cref="TrialsPerSession"/>
    public static double Endless(int sessions, double sessionSd, double degreesOfFreedom, double assurance = 0.80, double level = 0.95)
    {
        Require(sessions, sessionSd);
        return ErrorsAssured(degreesOfFreedom, assurance, level) * sessionSd / Math.Sqrt(sessions);
    }

    /// <summary>The half-width that is assured, in true standard errors: t sqrt(chi2_A(df)/df).</summary>
    /// <param name="degreesOfFreedom">Of the variance estimate.</param>
    /// <param name="assurance">How likely the half-width comes out no wider.</param>
    /// <param name="level">The confidence level.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    public static double ErrorsAssured(double degreesOfFreedom, double assurance = 0.80, double level = 0.95)
    {
        Argument.RequireLevel(level, nameof(level));
        return StudentDistribution.Quantile(0.5 + (0.5 * level), degreesOfFreedom)
            * Math.Sqrt(ChiSquaredDistribution.Quantile(assurance, degreesOfFreedom) / degreesOfFreedom);
    }

    private static void Require(int sessions, double sessionSd)
    {
        Argument.RequireAtLeast(sessions, 1, nameof(sessions), "Plan a session.");
        Argument.RequireNotNegative(sessionSd, nameof(sessionSd));
    }
}
