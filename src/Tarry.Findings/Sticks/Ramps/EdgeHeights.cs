namespace Tarry.Findings.Sticks.Ramps;

/// <summary>Two heights on one side of a place at which an axis stands still, each midway between two positions that it can say.</summary>
/// <param name="Place">Where it stands still.</param>
/// <param name="Near">The nearer height.</param>
/// <param name="Far">The farther one.</param>
internal readonly record struct EdgeHeights(double Place, double Near, double Far)
{
    /// <summary>Heights about once and twice a distance away.</summary>
    public static EdgeHeights About(double step, double place, double distance) =>
        new(place, Midway(step, place + distance), Midway(step, place + (2 * distance)));

    /// <summary>The level at which the axis leaves the place, from those at which it crosses the heights: straight on where it is straight, the jump itself where it jumps over both.</summary>
    public double Edge(double nearLevel, double farLevel) =>
        (((Far - Place) * nearLevel) - ((Near - Place) * farLevel)) / (Far - Near);

    private static double Midway(double step, double height) =>
        step == 0 ? height : ((Math.Floor((height + 100) / step) + 0.5) * step) - 100;
}
