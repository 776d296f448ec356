using Tarry.Statistics.Distributions;

namespace Tarry.Statistics.Planning;

/// <summary>How likely a comparison reaches its conclusion, exactly, for normal means.</summary>
public static class TestPower
{
    /// <summary>The probability that a two-sided t test tells a true difference, on either side.</summary>
    /// <remarks>
    /// P(T &gt; t) + P(T &lt; -t) with T noncentral t of difference/SE (R's <c>power.t.test(strict = TRUE)</c>; without
    /// <c>strict</c> the far side is left out).
    /// </remarks>
    /// <param name="difference">The true difference, in the unit of the standard error.</param>
    /// <param name="standardError">The true standard error of the difference, above 0.</param>
    /// <param name="degreesOfFreedom">Of its estimate, above 0 and finite.</param>
    /// <param name="level">The confidence level that the test belongs to.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    public static double ToTell(double difference, double standardError, double degreesOfFreedom, double level = 0.95)
    {
        Argument.RequirePositive(standardError, nameof(standardError));
        Argument.RequireLevel(level, nameof(level));
        var critical = StudentDistribution.Quantile(0.5 + (0.5 * level), degreesOfFreedom);
        var noncentrality = Math.Abs(difference) / standardError;
        return NoncentralStudentDistribution.Cdf(-critical, degreesOfFreedom, noncentrality)
            + NoncentralStudentDistribution.UpperTail(critical, degreesOfFreedom, noncentrality);
    }

    /// <summary>The probability that two one-sided tests find a difference inside +-margin.</summary>
    /// <remarks>
    /// Both reject when the difference lies between -margin + t s and margin - t s, s the estimated standard error: the
    /// normal probability of that, integrated over the law of s (D. J. Schuirmann, J. Pharmacokinet. Biopharm. 15, 1987;
    /// exact power: D. B. Owen, Biometrika 52, 1965, from memory).
    /// </remarks>
    /// <param name="difference">The true difference, in the unit of the standard error.</param>
    /// <param name="lower">The lower bound.</param>
    /// <param name="upper">The upper bound, above the lower one.</param>
    /// <param name="standardError">The true standard error of the difference, above 0.</param>
    /// <param name="degreesOfFreedom">Of its estimate, above 0 and finite.</param>
    /// <param name="oneSidedLevel">The level of each test, such as 0.05.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    public static double ToShowEquivalent(double difference, double lower, double upper, double standardError, double degreesOfFreedom, double oneSidedLevel = 0.05)
    {
        Argument.RequirePositive(standardError, nameof(standardError));
        Argument.RequirePositive(upper - lower, nameof(upper));
        Argument.RequireLevel(oneSidedLevel, nameof(oneSidedLevel));
        var critical = StudentDistribution.Quantile(1 - oneSidedLevel, degreesOfFreedom);
        var (low, high) = ((lower - difference) / standardError, (upper - difference) / standardError);
        return ScaleLaw.Expectation(
            scale => NormalDistribution.Cdf(high - (critical * scale)) - NormalDistribution.Cdf(low + (critical * scale)),
            degreesOfFreedom,
            0,
            (high - low) / (2 * critical));
    }

    /// <summary>The true difference, in standard errors, that a two-sided t test tells with a given power.</summary>
    /// <param name="degreesOfFreedom">Above 0 and finite.</param>
    /// <param name="level">The confidence level that the test belongs to.</param>
    /// <param name="power">The power, above 1 - level.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    public static double ErrorsToTell(double degreesOfFreedom, double level = 0.95, double power = 0.80)
    {
        RequirePower(power, 1 - level);
        return Root(errors => ToTell(errors, 1, degreesOfFreedom, level) - power);
    }

    /// <summary>The margin, in standard errors, within which equal conditions are shown to lie with a given power.</summary>
    /// <param name="degreesOfFreedom">Above 0 and finite.</param>
    /// <param name="oneSidedLevel">The level of each test.</param>
    /// <param name="power">The power.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    public static double ErrorsToShowEquivalent(double degreesOfFreedom, double oneSidedLevel = 0.05, double power = 0.80)
    {
        RequirePower(power, 0);
        return Root(errors => ToShowEquivalent(0, -errors, errors, 1, degreesOfFreedom, oneSidedLevel) - power);
    }

    private static void RequirePower(double power, double above)
    {
        Argument.RequireLevel(power, nameof(power));
        if (!(power > above))
        {
            throw new ArgumentOutOfRangeException(nameof(power), power, $"power is {power}; a test has {above} without any difference. Give 0.8 or 0.9.");
        }
    }

    private static double Root(Func<double, double> excess)
    {
        var high = 4.0;
        while (excess(high) < 0)
        {
            high *= 2;
        }

        return MathNet.Numerics.RootFinding.Brent.FindRoot(excess, 1e-6, high, 1e-9, 200);
    }
}
