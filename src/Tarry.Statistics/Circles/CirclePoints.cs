namespace Tarry.Statistics.Circles;

/// <summary>Central moments of points about their mean, as the algebraic circle fits need them; z is x^2 + y^2.</summary>
internal readonly record struct CirclePoints(double MeanX, double MeanY, double Xx, double Yy, double Xy, double Xz, double Yz, double Zz)
{
    /// <summary>Fewest points that a circle needs.</summary>
    public const int SmallestCount = 3;

    public double Z => Xx + Yy;

    public double Determinant => (Xx * Yy) - (Xy * Xy);

    public static CirclePoints Of(ReadOnlySpan<double> x, ReadOnlySpan<double> y)
    {
        Require(x, y);
        var (meanX, meanY) = (Descriptives.Moments.Mean(x), Descriptives.Moments.Mean(y));
        double xx = 0, yy = 0, xy = 0, xz = 0, yz = 0, zz = 0;
        for (var i = 0; i < x.Length; i++)
        {
            var (a, b) = (x[i] - meanX, y[i] - meanY);
            var z = (a * a) + (b * b);
            xx += a * a;
            yy += b * b;
            xy += a * b;
            xz += a * z;
            yz += b * z;
            zz += z * z;
        }

        var n = x.Length;
        var points = new CirclePoints(meanX, meanY, xx / n, yy / n, xy / n, xz / n, yz / n, zz / n);
        return points.Determinant > 1e-14 * points.Z * points.Z
            ? points
            : throw new ArgumentException("The points lie on a line or at one place; a circle needs three that do not.", nameof(x));
    }

    public static void Require(ReadOnlySpan<double> x, ReadOnlySpan<double> y)
    {
        Argument.RequireSameLength(x.Length, y.Length, nameof(x), nameof(y));
        Argument.RequireCount(x, SmallestCount, nameof(x));
        Argument.RequireFinite(x, nameof(x));
        Argument.RequireFinite(y, nameof(y));
    }

    /// <summary>The circle of a root of the characteristic polynomial.</summary>
    public Circle At(double root, double added)
    {
        var determinant = (root * root) - (root * Z) + Determinant;
        var a = ((Xz * (Yy - root)) - (Yz * Xy)) / determinant / 2;
        var b = ((Yz * (Xx - root)) - (Xz * Xy)) / determinant / 2;
        return new Circle(MeanX + a, MeanY + b, Math.Sqrt((a * a) + (b * b) + Z + added));
    }
}
