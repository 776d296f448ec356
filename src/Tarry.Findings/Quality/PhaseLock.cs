using Tarry.Statistics.Drift;
using Tarry.Statistics.Quantiles;

namespace Tarry.Findings.Quality;

/// <summary>Whether the presses of a session keep step with a period: the one that the device states, or one that the presses themselves show.</summary>
/// <param name="PeriodMs">The period.</param>
/// <param name="ResultantLength">How closely, from 0 to 1.</param>
/// <param name="P">The probability of such presses were they free, corrected for the periods that were tried.</param>
internal readonly record struct PhaseLock(double PeriodMs, double ResultantLength, double P)
{
    private const int FewestPresses = 50;

    // Two crystals of 50 ppm each.
    private const double ClocksApart = 100e-6;

    // A timer that ticks in milliseconds writes press times on a lattice of 1 ms, so the search ends above that period.
    private const double LowestHz = 60;
    private const double HighestHz = 700;
    private const double WidestMs = 400;

    // What free intervals over 40 ms show at these frequencies by the edges of their distribution: sinc(2.5) of a uniform one.
    private const double OfFreeIntervals = 0.13;
    private const double LeastOfIntervals = 0.3;

    /// <summary>The period that the presses keep step with most plainly; null where there are too few presses, or nothing to tell.</summary>
    /// <param name="pressesMs">Press times in order.</param>
    /// <param name="nominalReportHz">The report rate that the maker states, if any.</param>
    public static PhaseLock? Of(ReadOnlySpan<double> pressesMs, double? nominalReportHz)
    {
        if (pressesMs.Length < FewestPresses)
        {
            return null;
        }

        var stated = nominalReportHz is { } rate ? WithPeriodNear(pressesMs, 1000 / rate) : default(PhaseLock?);
        var shown = OfIntervals(pressesMs);
        return shown is { } own && (stated is not { } known || own.P < known.P) ? own : stated;
    }

    /// <summary>Rayleigh's test at the stated period and those that two clocks can make of it, half a cycle of the session apart.</summary>
    private static PhaseLock WithPeriodNear(ReadOnlySpan<double> presses, double periodMs)
    {
        var span = Math.Max(presses[^1] - presses[0], periodMs);
        var centre = 1 / periodMs;
        var steps = (int)Math.Ceiling(2 * ClocksApart * centre * span);
        var best = default(RayleighTest);
        var bestPeriod = periodMs;
        var phases = new double[presses.Length];
        for (var step = -steps; step <= steps; step++)
        {
            var frequency = centre + (step / (2 * span));
            for (var i = 0; i < phases.Length; i++)
            {
                phases[i] = (presses[i] - presses[0]) * frequency;
            }

            var test = RayleighTest.Of(phases);
            if (test.ResultantLength > best.ResultantLength)
            {
                (best, bestPeriod) = (test, 1 / frequency);
            }
        }

        return new PhaseLock(bestPeriod, best.ResultantLength, Math.Min(1, ((2 * steps) + 1) * best.P));
    }

    /// <summary>
    /// Intervals between presses that are whole multiples of one period: |mean e^(2 pi i f interval)| over frequencies. The clocks
    /// drift apart too little within an interval to matter. Presses that are off the period by a phase of resultant R make
    /// intervals of R^2.
    /// </summary>
    private static PhaseLock? OfIntervals(ReadOnlySpan<double> presses)
    {
        var intervals = new double[presses.Length - 1];
        for (var i = 0; i < intervals.Length; i++)
        {
            intervals[i] = presses[i + 1] - presses[i];
        }

        Array.Sort(intervals);
        var (low, high) = (SampleQuantile.Of(intervals, 0.01)!.Value, SampleQuantile.Of(intervals, 0.99)!.Value);
        var middle = SampleQuantile.Of(intervals, 0.5)!.Value;
        (low, high) = (Math.Max(low, middle - (WidestMs / 2)), Math.Min(high, middle + (WidestMs / 2)));
        if (high - low < PressTiming.NarrowestRangeMs)
        {
            // Intervals this alike keep step with every long period; that is the caution of the lattice.
            return null;
        }

        double[] near = [.. intervals.Where(interval => interval >= low && interval <= high)];
        var step = 1 / (8 * (high - low));
        var count = (int)((HighestHz - LowestHz) / 1000 / step) + 1;
        var lengths = Resultants(near, LowestHz / 1000, step, count);
        var greatest = lengths.Max();
        if (greatest < LeastOfIntervals)
        {
            return null;
        }

        // Multiples of a period are in step with its fractions as well: the longest period counts.
        var first = Array.FindIndex(lengths, length => length > 0.9 * greatest);
        while (first + 1 < count && lengths[first + 1] > lengths[first])
        {
            first++;
        }

        var (frequency, length) = ((LowestHz / 1000) + (first * step), lengths[first]);
        for (var zoom = 0; zoom < 2; zoom++)
        {
            var from = frequency - step;
            step /= 16;
            var fine = Resultants(near, from, step, 33);
            var place = Array.IndexOf(fine, fine.Max());
            (frequency, length) = (from + (place * step), fine[place]);
        }

        var p = Math.Min(1, count * Math.Exp(-near.Length * Math.Pow(length - OfFreeIntervals, 2)));
        return new PhaseLock(1 / frequency, Math.Sqrt(length), p);
    }

    // Each frequency turns every interval on by the same angle, so that no sine is taken twice.
    private static double[] Resultants(double[] intervals, double from, double step, int count)
    {
        var real = new double[count];
        var imaginary = new double[count];
        foreach (var interval in intervals)
        {
            var (sine, cosine) = Math.SinCos(2 * Math.PI * from * interval);
            var (sineOfStep, cosineOfStep) = Math.SinCos(2 * Math.PI * step * interval);
            for (var i = 0; i < count; i++)
            {
                real[i] += cosine;
                imaginary[i] += sine;
                (cosine, sine) = ((cosine * cosineOfStep) - (sine * sineOfStep), (cosine * sineOfStep) + (sine * cosineOfStep));
            }
        }

        return [.. real.Zip(imaginary, (a, b) => Math.Sqrt((a * a) + (b * b)) / intervals.Length)];
    }
}
