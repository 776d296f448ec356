namespace Tarry.Statistics.Distributions;

/// <summary>Normal noise that is only known rounded to steps, such as positions of an axis with few of them.</summary>
/// <remarks>
/// Rounded to multiples c of a step q, a normal variable has P(c) = Phi((c + q/2 - m)/s) - Phi((c - q/2 - m)/s). Mean and variance of the
/// rounded values are solved for m and s: the method of moments. Above s = q/2 that is Sheppard's correction, s^2 = v - q^2/12, which is off
/// by up to a seventh at s = 0.4 q, depending on where between two steps the mean lies.
/// </remarks>
public static class RoundedNormal
{
    private const double Reach = 7;
    private const double Least = 0.05;
    private const int Halvings = 50;

    /// <summary>The standard deviation before rounding; null where rounding alone explains the variance.</summary>
    /// <param name="mean">The mean of the rounded values, in steps from one of them.</param>
    /// <param name="variance">Their variance, in steps squared.</param>
    public static double? StandardDeviation(double mean, double variance)
    {
        if (!double.IsFinite(mean))
        {
            throw new ArgumentOutOfRangeException(nameof(mean), mean, "The mean must be a number.");
        }

        Argument.RequireNotNegative(variance, nameof(variance));
        var (low, high) = (Least, Math.Sqrt(variance) + 1);
        if (Variance(mean, low) >= variance)
        {
            return null;
        }

        for (var halving = 0; halving < Halvings; halving++)
        {
            var middle = (low + high) / 2;
            (low, high) = Variance(mean, middle) < variance ? (middle, high) : (low, middle);
        }

        return (low + high) / 2;
    }

    // Of the rounded values, where their mean is the one given.
    private static double Variance(double mean, double deviation)
    {
        var (low, high) = (mean - 1, mean + 1);
        for (var halving = 0; halving < Halvings; halving++)
        {
            var middle = (low + high) / 2;
            (low, high) = Moments(middle, deviation).Mean < mean ? (middle, high) : (low, middle);
        }

        return Moments((low + high) / 2, deviation).Variance;
    }

    private static (double Mean, double Variance) Moments(double centre, double deviation)
    {
        var (first, last) = ((long)Math.Floor(centre - (Reach * deviation)), (long)Math.Ceiling(centre + (Reach * deviation)));
        double mean = 0, squares = 0;
        var below = NormalDistribution.Cdf((first - 0.5 - centre) / deviation);
        for (var code = first; code <= last; code++)
        {
            var upTo = NormalDistribution.Cdf((code + 0.5 - centre) / deviation);
            mean += (code - centre) * (upTo - below);
            squares += (code - centre) * (code - centre) * (upTo - below);
            below = upTo;
        }

        return (centre + mean, squares - (mean * mean));
    }
}
