namespace Tarry.Statistics.Lines;

/// <summary>A straight line through points by least squares, with the uncertainty of its slope and of what it predicts.</summary>
/// <remarks>
/// slope = Sxy / Sxx; s^2 = sum of squared residuals / (n - 2); u(slope) = s / sqrt(Sxx); u^2 at x: s^2 (1/n + (x - mean)^2 / Sxx)
/// (JCGM 100:2008, H.3.2 and H.3.4). Assumes that x is exact and that all y scatter alike and independently.
/// </remarks>
public sealed class StraightLine
{
    private readonly double squares;
    private readonly double meanX;
    private readonly double meanY;
    private readonly int count;

    private StraightLine(double squares, double meanX, double meanY, int count, double slope, double deviation)
    {
        this.squares = squares;
        this.meanX = meanX;
        this.meanY = meanY;
        this.count = count;
        Slope = slope;
        Deviation = deviation;
    }

    /// <summary>The slope.</summary>
    public double Slope { get; }

    /// <summary>The standard deviation of the points about the line.</summary>
    public double Deviation { get; }

    /// <summary>The standard uncertainty of the slope.</summary>
    public double SlopeUncertainty => Deviation / Math.Sqrt(squares);

    /// <summary>Fits a line.</summary>
    /// <param name="x">Where, exact; not all the same.</param>
    /// <param name="y">What was observed there; as many, at least three.</param>
    /// <param name="leastDeviation">The points scatter by no less than this, whatever they seem to: what their resolution allows.</param>
    /// <exception cref="ArgumentException">The points are too few, not paired, or all at one place.</exception>
    public static StraightLine Fit(IReadOnlyList<double> x, IReadOnlyList<double> y, double leastDeviation = 0)
    {
        ArgumentNullException.ThrowIfNull(x);
        ArgumentNullException.ThrowIfNull(y);
        if (x.Count != y.Count || x.Count < 3)
        {
            throw new ArgumentException($"A line needs three points or more, each with an x and a y; there are {x.Count} and {y.Count}.", nameof(x));
        }

        var meanX = x.Average();
        var meanY = y.Average();
        double squares = 0;
        double products = 0;
        for (var i = 0; i < x.Count; i++)
        {
            squares += (x[i] - meanX) * (x[i] - meanX);
            products += (x[i] - meanX) * (y[i] - meanY);
        }

        if (!(squares > 0))
        {
            throw new ArgumentException("All points are at one place; a slope needs two.", nameof(x));
        }

        var slope = products / squares;
        double residuals = 0;
        for (var i = 0; i < x.Count; i++)
        {
            var residual = y[i] - meanY - (slope * (x[i] - meanX));
            residuals += residual * residual;
        }

        return new StraightLine(squares, meanX, meanY, x.Count, slope, Math.Max(Math.Sqrt(residuals / (x.Count - 2)), leastDeviation));
    }

    /// <summary>The line at a place.</summary>
    public double At(double x) => meanY + (Slope * (x - meanX));

    /// <summary>The standard uncertainty of the line at a place.</summary>
    public double UncertaintyAt(double x) => Deviation * Math.Sqrt((1.0 / count) + ((x - meanX) * (x - meanX) / squares));
}
