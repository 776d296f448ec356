namespace Tarry.Statistics.Tests.Circles;

/// <summary>Points of published circle fits, and one profile of roundness.</summary>
internal static class PublishedCircles
{
    /// <summary>W. Gander, G. H. Golub, R. Strebel, BIT 34, 1994.</summary>
    public static readonly (double[] X, double[] Y) Gander = ([1, 2, 5, 7, 9, 3], [7, 6, 8, 7, 5, 7]);

    /// <summary>SciPy Cookbook, Least_Squares_Circle, the first set.</summary>
    public static readonly (double[] X, double[] Y) Cookbook = ([9, 35, -13, 10, 23, 0], [34, 10, 6, -14, 27, -10]);

    /// <summary>The same page, the arc.</summary>
    public static readonly (double[] X, double[] Y) Arc = ([36, 36, 19, 18, 33, 26], [14, 10, 28, 31, 18, 26]);

    /// <summary>Twelve points about (0.1, -0.05), a twelfth of a turn apart.</summary>
    public static readonly (double[] X, double[] Y) Twelve = Profile([1.00, 1.02, .99, 1.01, 1.03, 1.00, .98, 1.00, 1.02, 1.01, .97, .99]);

    private static (double[] X, double[] Y) Profile(double[] radii) => (
        [.. radii.Select((radius, index) => 0.1 + (radius * Math.Cos(index * Math.PI / 6)))],
        [.. radii.Select((radius, index) => -0.05 + (radius * Math.Sin(index * Math.PI / 6)))]);
}
