namespace Tarry.Findings.Sticks.Rim;

/// <summary>Hysteresis of each axis from turns both ways round.</summary>
/// <remarks>
/// An axis that lags by h reads x = R cos t + h s(sin t) on a counter-clockwise turn, s the sign, and the opposite on a clockwise one: half the
/// difference of the two distances is h_x s(sin t) cos t - h_y s(cos t) sin t. Both are found by least squares. After an axis turns back
/// it stands still until it has gone 2h; those stretches, arccos(1 - 2h/R) past each axis, are left out. A stick that lags in its angle
/// alone, along the gate, shows nothing here: that needs stops or levels. The width between there and back, 2h, is given.
/// </remarks>
internal static class RimHysteresis
{
    private const double Margin = 3;
    private const double LeastLeftOut = 8;
    private const double MostLeftOut = 40;
    private const int Rounds = 5;

    /// <summary>Widths of x and y from a turn each way.</summary>
    public static (double X, double Y)? Of(RimProfile counterClockwise, RimProfile clockwise)
    {
        var bins = counterClockwise.Bins;
        var (x, y) = (0.0, 0.0);
        var radius = 0.0;
        for (var bin = 0; bin < bins; bin++)
        {
            radius += Distance(counterClockwise, bin) / bins;
        }

        for (var round = 0; round < Rounds; round++)
        {
            var widest = Math.Max(Math.Abs(x), Math.Abs(y));
            var leftOut = Math.Clamp((Math.Acos(Math.Clamp(1 - (2 * widest / radius), -1, 1)) * 180 / Math.PI) + Margin, LeastLeftOut, MostLeftOut);
            if (Fit(counterClockwise, clockwise, leftOut) is not { } next)
            {
                return null;
            }

            (x, y) = next;
        }

        return (2 * x, 2 * y);
    }

    private static (double X, double Y)? Fit(RimProfile counterClockwise, RimProfile clockwise, double leftOutDegrees)
    {
        double xx = 0, xy = 0, yy = 0, xd = 0, yd = 0;
        var bends = Bends(counterClockwise, clockwise);
        for (var bin = 0; bin < counterClockwise.Bins; bin++)
        {
            var angle = (bin + 0.5) * 2 * Math.PI / counterClockwise.Bins;
            var fromAxis = Math.Abs(Math.IEEERemainder(angle, Math.PI / 2)) * 180 / Math.PI;
            if (fromAxis < leftOutDegrees)
            {
                continue;
            }

            var (sine, cosine) = Math.SinCos(angle);
            var bend = bends[bin];
            var (a, b) = (Math.Sign(sine) * (cosine + (bend * sine)), -Math.Sign(cosine) * (sine - (bend * cosine)));
            var half = (Distance(counterClockwise, bin) - Distance(clockwise, bin)) / 2;
            xx += a * a;
            xy += a * b;
            yy += b * b;
            xd += a * half;
            yd += b * half;
        }

        var determinant = (xx * yy) - (xy * xy);
        return determinant > 1e-9 ? (((xd * yy) - (yd * xy)) / determinant, ((yd * xx) - (xd * xy)) / determinant) : null;
    }

    // r'(t)/r of the first two harmonics of the mean distance: on an ellipse, or beside the centre, a shift is not met at the angle where it came from.
    private static double[] Bends(RimProfile counterClockwise, RimProfile clockwise)
    {
        var bins = counterClockwise.Bins;
        var bends = new double[bins];
        var mean = Enumerable.Range(0, bins).Average(bin => Distance(counterClockwise, bin) + Distance(clockwise, bin));
        for (var harmonic = 1; harmonic <= 2; harmonic++)
        {
            var (cosines, sines) = (0.0, 0.0);
            for (var bin = 0; bin < bins; bin++)
            {
                var (sine, cosine) = Math.SinCos(harmonic * (bin + 0.5) * 2 * Math.PI / bins);
                var share = 2 * (Distance(counterClockwise, bin) + Distance(clockwise, bin)) / mean / bins;
                (cosines, sines) = (cosines + (share * cosine), sines + (share * sine));
            }

            for (var bin = 0; bin < bins; bin++)
            {
                var (sine, cosine) = Math.SinCos(harmonic * (bin + 0.5) * 2 * Math.PI / bins);
                bends[bin] += harmonic * ((sines * cosine) - (cosines * sine));
            }
        }

        return bends;
    }

    private static double Distance(RimProfile profile, int bin) => Math.Sqrt((profile.X[bin] * profile.X[bin]) + (profile.Y[bin] * profile.Y[bin]));
}
