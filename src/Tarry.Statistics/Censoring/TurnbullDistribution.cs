namespace Tarry.Statistics.Censoring;

/// <summary>The non-parametric maximum likelihood estimate of the distribution of values known as intervals.</summary>
/// <remarks>
/// Mass can be only where a low bound is followed directly by a high one (B. W. Turnbull, J. R. Stat. Soc. B 38, 1976). The masses maximise
/// sum over i of log P(value i lies in its interval), by steps of self-consistency (EM; Turnbull) and of iterative convex minorants in turn (J. A. Wellner, Y. Zhan,
/// J. Am. Stat. Assoc. 92, 1997), until no mass could raise the likelihood: the gradient is within 1e-8 of its bound. Where within an interval of support the mass lies the data do not say: quantiles
/// and means are given as ranges. Linear in the number of values for each step.
/// </remarks>
public sealed class TurnbullDistribution
{
    private const double Rounding = 1e-12;

    private TurnbullDistribution(IReadOnlyList<SupportInterval> support, int count, bool converged) => (Support, Count, Converged) = (support, count, converged);

    /// <summary>Where the probability is, in order; only intervals that have any.</summary>
    public IReadOnlyList<SupportInterval> Support { get; }

    /// <summary>How many values it is from.</summary>
    public int Count { get; }

    /// <summary>Whether the likelihood is at its maximum to within the tolerance.</summary>
    public bool Converged { get; }

    /// <summary>Estimates it.</summary>
    /// <param name="values">The values, one at least.</param>
    /// <exception cref="ArgumentException">There is none, or one has its low bound above the high one, or NaN.</exception>
    public static TurnbullDistribution Of(IReadOnlyList<CensoredValue> values)
    {
        ArgumentNullException.ThrowIfNull(values);
        if (values.Count == 0 || values.Any(value => !(value.Low <= value.High)))
        {
            throw new ArgumentException("Give one value or more, each with its low bound not above its high bound.", nameof(values));
        }

        var innermost = InnermostIntervals.Of(values);
        var (masses, converged) = SelfConsistency.Solve(innermost);
        var support = new List<SupportInterval>();
        for (var index = 0; index < masses.Length; index++)
        {
            if (masses[index] > 1e-10)
            {
                support.Add(new SupportInterval(innermost.Lows[index], innermost.Highs[index], masses[index]));
            }
        }

        return new TurnbullDistribution(support, values.Count, converged);
    }

    /// <summary>The range in which the quantile of a level lies: the interval of support in which the cumulative probability reaches it.</summary>
    /// <param name="level">Between 0 and 1.</param>
    /// <remarks>Where it is reached exactly at the end of one interval every value up to the next is a quantile: the range reaches into the next.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">The level is not between 0 and 1.</exception>
    public (double Low, double High) QuantileRange(double level)
    {
        if (!(level is > 0 and < 1))
        {
            throw new ArgumentOutOfRangeException(nameof(level), level, "A quantile level lies between 0 and 1.");
        }

        var cumulative = 0.0;
        double? low = null;
        foreach (var interval in Support)
        {
            cumulative += interval.Mass;
            if (cumulative > level - Rounding)
            {
                low ??= interval.Low;
                if (cumulative > level + Rounding)
                {
                    return (low.Value, interval.High);
                }
            }
        }

        return (low ?? Support[^1].Low, Support[^1].High);
    }

    /// <summary>The least and the greatest mean that the estimate allows; infinite where a bound is.</summary>
    public (double Low, double High) MeanBounds()
    {
        var total = Support.Sum(interval => interval.Mass);
        return (Support.Sum(interval => interval.Mass * interval.Low) / total, Support.Sum(interval => interval.Mass * interval.High) / total);
    }
}
