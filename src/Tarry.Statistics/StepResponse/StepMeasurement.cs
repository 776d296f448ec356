using Tarry.Statistics.Quantiles;

namespace Tarry.Statistics.StepResponse;

/// <summary>Measures the response to one jump of the stimulus by reference levels of 10, 50 and 90 % between two state levels (IEEE 181, 5.2 and 5.3).</summary>
/// <remarks>
/// The state levels are medians: before the jump, and of the last third of the record after it. A reference level is crossed where the
/// straight line between two positions crosses it, at its last crossing before the opposite state: the first for the delay. Where
/// positions come in reports, the response lies up to one report interval before what the reports show.
/// </remarks>
public static class StepMeasurement
{
    private const double Low = 0.1;
    private const double Middle = 0.5;
    private const double High = 0.9;

    /// <summary>Measures one response.</summary>
    /// <param name="times">The time of each position, ascending.</param>
    /// <param name="values">The positions.</param>
    /// <param name="jump">When the stimulus jumped; positions at it or before it are of the base.</param>
    /// <param name="tolerance">The band about the final level, as a share of the amplitude, such as 0.02.</param>
    /// <param name="noise">What noise reaches, in the unit of the positions: an overshoot within it is none, and it widens the band.</param>
    /// <returns>The measurement; null where there are fewer than 3 positions before or 6 after, or the levels do not differ by ten times the noise.</returns>
    /// <exception cref="ArgumentException">The columns differ in length.</exception>
    public static StepMoments? Of(ReadOnlySpan<double> times, ReadOnlySpan<double> values, double jump, double tolerance = 0.02, double noise = 0)
    {
        Argument.RequireSameLength(times.Length, values.Length, nameof(times), nameof(values));
        var start = 0;
        while (start < times.Length && times[start] <= jump)
        {
            start++;
        }

        var after = times.Length - start;
        if (start < 3 || after < 6)
        {
            return null;
        }

        var (lower, upper) = (Median(values[..start]), Median(values[(times.Length - (after / 3))..]));
        var amplitude = upper - lower;
        if (!(Math.Abs(amplitude) > 10 * noise) || amplitude == 0)
        {
            return null;
        }

        double? low = null, middle = null, high = null;
        var peak = 0.0;
        var settled = jump;
        for (var i = start; i < times.Length; i++)
        {
            var share = (values[i] - lower) / amplitude;
            var (before, since) = i == start ? ((values[i - 1] - lower) / amplitude, Math.Max(jump, times[i - 1])) : ((values[i - 1] - lower) / amplitude, times[i - 1]);
            low ??= Crossing(before, share, since, times[i], Low);
            middle ??= Crossing(before, share, since, times[i], Middle);
            high ??= Crossing(before, share, since, times[i], High);
            peak = Math.Max(peak, share - 1);
            settled = Math.Abs(share - 1) > tolerance + (noise / Math.Abs(amplitude)) ? times[Math.Min(i + 1, times.Length - 1)] : settled;
        }

        return low is { } from && middle is { } half && high is { } to
            ? new StepMoments(lower, upper, half - jump, to - from, peak <= noise / Math.Abs(amplitude) ? 0 : peak, settled - jump)
            : null;
    }

    private static double? Crossing(double before, double after, double from, double to, double level) =>
        after < level ? null
        : before >= level || after == before ? from
        : from + ((level - before) / (after - before) * (to - from));

    private static double Median(ReadOnlySpan<double> values)
    {
        var sorted = values.ToArray();
        Array.Sort(sorted);
        return SampleQuantile.Of(sorted, 0.5)!.Value;
    }
}
