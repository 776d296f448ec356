namespace Tarry.Statistics.Tests;

/// <summary>Agreement with a reference value, to a relative or an absolute tolerance.</summary>
internal static class Close
{
    public static void Relative(double expected, double actual, double tolerance) =>
        Assert.True(
            Math.Abs(actual - expected) <= tolerance * Math.Abs(expected),
            $"expected {expected:R}, got {actual:R}: relative difference {Math.Abs(actual - expected) / Math.Abs(expected):E2} above {tolerance:E0}");

    public static void Absolute(double expected, double actual, double tolerance) =>
        Assert.True(
            Math.Abs(actual - expected) <= tolerance,
            $"expected {expected:R}, got {actual:R}: difference {Math.Abs(actual - expected):E2} above {tolerance:E0}");

    public static void Limits(double low, double high, ConfidenceLimits actual, double tolerance)
    {
        Absolute(low, actual.Low, tolerance);
        Absolute(high, actual.High, tolerance);
    }

    /// <summary>Whether a count of successes agrees with a probability, to 4 binomial standard errors.</summary>
    public static void Share(double probability, int count, int trials, double slack = 0) =>
        Absolute(probability, (double)count / trials, slack + (4 * Math.Sqrt(probability * (1 - probability) / trials)));
}
