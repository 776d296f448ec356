namespace Tarry.Statistics;

/// <summary>The two ends of a confidence interval, in the unit of the values it was computed from.</summary>
/// <param name="Low">The low end.</param>
/// <param name="High">The high end.</param>
public readonly record struct ConfidenceLimits(double Low, double High)
{
    /// <summary>Half the distance between the ends.</summary>
    public double HalfWidth => 0.5 * (High - Low);

    /// <summary>Whether a value lies inside, ends included.</summary>
    public bool Contains(double value) => value >= Low && value <= High;
}
