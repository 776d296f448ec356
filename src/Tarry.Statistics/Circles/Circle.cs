namespace Tarry.Statistics.Circles;

/// <summary>A circle, in the unit of the points that it was fitted to.</summary>
/// <param name="X">The centre's x.</param>
/// <param name="Y">The centre's y.</param>
/// <param name="Radius">The radius, 0 or more.</param>
public readonly record struct Circle(double X, double Y, double Radius)
{
    /// <summary>How far a point lies from the centre.</summary>
    public double DistanceOf(double x, double y) => Math.Sqrt(((x - X) * (x - X)) + ((y - Y) * (y - Y)));

    /// <summary>How far a point lies outside, negative inside.</summary>
    public double DeviationOf(double x, double y) => DistanceOf(x, y) - Radius;
}
