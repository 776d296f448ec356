namespace Tarry.Findings.Sticks.Reshaping;

/// <summary>said = ((position - dead zone)/(saturation - dead zone))^exponent, fitted to a map.</summary>
/// <param name="DeadZone">The dead zone, per cent.</param>
/// <param name="Saturation">The saturation.</param>
/// <param name="Exponent">The exponent.</param>
/// <remarks>
/// For a stated dead zone the logarithm of what is said is a straight line over that of the way beyond the zone: least squares with weights of
/// said^2, as equal errors of what is said ask for. The dead zone is searched for by golden section over those lines. Points below a
/// twenty-fifth of the end, where noise decides the logarithm, and above 24 twenty-fifths, where it may be saturated, are left out.
/// </remarks>
internal readonly record struct ResponseCurve(double DeadZone, double Saturation, double Exponent)
{
    private const double Margin = 0.04;
    private const int Fewest = 4;
    private static readonly double Golden = (Math.Sqrt(5) - 1) / 2;

    /// <summary>The curve, or null where too few points lie between both ends.</summary>
    public static ResponseCurve? Fit(double[] without, double[] with) => Fit(without, with, with.Max());

    /// <summary>The curve of some of the points, where the end that is said is known.</summary>
    public static ResponseCurve? Fit(double[] without, double[] with, double end)
    {
        var points = without.Zip(with, (position, said) => (Position: position, Said: said / end)).Where(point => point.Said is > Margin and < 1 - Margin && point.Position > 0).ToArray();
        if (!(end > 0) || points.Select(point => point.Position).Distinct().Count() < Fewest)
        {
            return null;
        }

        var (low, high) = (-10.0, points.Min(point => point.Position) - 1e-3);
        for (var round = 0; round < 60; round++)
        {
            var (a, b) = (high - (Golden * (high - low)), low + (Golden * (high - low)));
            (low, high) = Line(points, a).Squares < Line(points, b).Squares ? (low, b) : (a, high);
        }

        var zone = (low + high) / 2;
        var (exponent, intercept, _) = Line(points, zone);
        return exponent > 0 ? new ResponseCurve(zone, zone + Math.Exp(-intercept / exponent), exponent) : null;
    }

    /// <summary>What is said at a position, as a share of the end.</summary>
    public double At(double position) => position <= DeadZone ? 0 : Math.Min(1, Math.Pow((position - DeadZone) / (Saturation - DeadZone), Exponent));

    private static (double Slope, double Intercept, double Squares) Line((double Position, double Said)[] points, double zone)
    {
        double weight = 0, x = 0, y = 0, xx = 0, xy = 0, yy = 0;
        foreach (var (position, said) in points)
        {
            var (w, u, v) = (said * said, Math.Log(position - zone), Math.Log(said));
            weight += w;
            x += w * u;
            y += w * v;
            xx += w * u * u;
            xy += w * u * v;
            yy += w * v * v;
        }

        var (sxx, sxy, syy) = (xx - (x * x / weight), xy - (x * y / weight), yy - (y * y / weight));
        var slope = sxy / sxx;
        return (slope, (y - (slope * x)) / weight, syy - (slope * sxy));
    }
}
