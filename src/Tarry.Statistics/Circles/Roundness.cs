namespace Tarry.Statistics.Circles;

/// <summary>How far points depart from a circle: the roundness deviation RONt of ISO 12181-1.</summary>
/// <param name="Circle">The reference circle.</param>
/// <param name="Peak">The largest deviation outwards.</param>
/// <param name="Valley">The largest deviation inwards, as a negative number or 0 where there is none.</param>
public readonly record struct Roundness(Circle Circle, double Peak, double Valley)
{
    /// <summary>Peak to valley: the largest less the smallest distance from the circle's centre.</summary>
    public double Deviation => Peak - Valley;

    /// <summary>From a reference circle.</summary>
    /// <param name="circle">The circle: its centre decides the deviation.</param>
    /// <param name="x">The x of each point.</param>
    /// <param name="y">The y of each.</param>
    /// <exception cref="ArgumentException">The points are too few, not paired or not finite.</exception>
    public static Roundness About(Circle circle, ReadOnlySpan<double> x, ReadOnlySpan<double> y)
    {
        CirclePoints.Require(x, y);
        var (peak, valley) = (double.NegativeInfinity, double.PositiveInfinity);
        for (var i = 0; i < x.Length; i++)
        {
            var deviation = circle.DeviationOf(x[i], y[i]);
            peak = Math.Max(peak, deviation);
            valley = Math.Min(valley, deviation);
        }

        return new Roundness(circle, peak, valley);
    }
}
