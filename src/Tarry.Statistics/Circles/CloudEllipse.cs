using Tarry.Statistics.Descriptives;

namespace Tarry.Statistics.Circles;

/// <summary>The ellipse that holds a stated share of a normal cloud of points.</summary>
/// <param name="X">The cloud's mean x.</param>
/// <param name="Y">Its mean y.</param>
/// <param name="SemiMajor">The longer half-axis.</param>
/// <param name="SemiMinor">The shorter half-axis.</param>
/// <param name="Angle">From the x axis counter-clockwise to the longer half-axis, in radians, from 0 up to pi.</param>
/// <remarks>
/// The eigenvectors of the covariance matrix give the axes, the roots of its eigenvalues times sqrt(-2 ln(1 - share)) their lengths: the
/// square of the distance in standard deviations is exponential with mean 2 in two dimensions. It describes the cloud and is no interval
/// of its mean, which <c>n</c> positions know far better. The shares of ISO 230-2 and of error ellipses in surveying are of this kind.
/// </remarks>
public readonly record struct CloudEllipse(double X, double Y, double SemiMajor, double SemiMinor, double Angle)
{
    /// <summary>From points.</summary>
    /// <param name="x">The x of each point; two or more.</param>
    /// <param name="y">The y of each.</param>
    /// <param name="share">The share of a normal cloud inside, such as 0.95.</param>
    /// <exception cref="ArgumentException">The points are too few, not paired or not finite.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The share is not strictly between 0 and 1.</exception>
    public static CloudEllipse Of(ReadOnlySpan<double> x, ReadOnlySpan<double> y, double share = 0.95)
    {
        Argument.RequireSameLength(x.Length, y.Length, nameof(x), nameof(y));
        Argument.RequireLevel(share, nameof(share));
        var (xx, yy) = (Moments.Variance(x), Moments.Variance(y));
        var (meanX, meanY, xy) = (Moments.Mean(x), Moments.Mean(y), 0.0);
        for (var i = 0; i < x.Length; i++)
        {
            xy += (x[i] - meanX) * (y[i] - meanY);
        }

        xy /= x.Length - 1;
        var half = (xx + yy) / 2;
        var root = Math.Sqrt(((xx - yy) * (xx - yy) / 4) + (xy * xy));
        var angle = 0.5 * Math.Atan2(2 * xy, xx - yy);
        var size = Math.Sqrt(-2 * Math.Log(1 - share));
        return new CloudEllipse(meanX, meanY, size * Math.Sqrt(half + root), size * Math.Sqrt(Math.Max(0, half - root)), angle < 0 ? angle + Math.PI : angle);
    }
}
