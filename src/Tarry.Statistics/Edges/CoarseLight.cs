using MathNet.Numerics.Statistics;

namespace Tarry.Statistics.Edges;

/// <summary>A light channel at a low rate, and its difference to one mains period before, averaged.</summary>
internal sealed class CoarseLight
{
    private const double UsualMainsHz = 50;

    /// <summary>A median of so many is known to some 5 %, and that of more would take most of the time.</summary>
    private const int MostForMedian = 500;
    private readonly double[] means;
    private readonly double hz;
    private readonly double meanNoise;

    public CoarseLight(ReadOnlySpan<double> samples, int every, double hz, double? mainsHz, double meanSeconds)
    {
        this.hz = hz;
        Samples = new double[samples.Length / every];
        for (var index = 0; index < Samples.Length; index++)
        {
            var sum = 0.0;
            for (var at = index * every; at < (index + 1) * every; at++)
            {
                sum += samples[at];
            }

            Samples[index] = sum / every;
        }

        var width = Math.Max(1, (int)(meanSeconds * hz));
        means = Averaged(Differences(hz / (mainsHz ?? UsualMainsHz)), width);
        Noise = NoiseOf(Samples);
        meanNoise = Math.Max(Noise * Math.Sqrt(2.0 / width), 1e-9);
    }

    public double[] Samples { get; }

    /// <summary>Standard deviation of the noise of a sample.</summary>
    public double Noise { get; }

    public CoarseStep Step(int from, int to)
    {
        (from, to) = (Math.Clamp(from, 0, means.Length - 1), Math.Clamp(to, 0, means.Length - 1));
        var highest = from;
        for (var index = from; index <= to; index++)
        {
            highest = means[index] > means[highest] ? index : highest;
        }

        var height = means[highest];
        var noise = Math.Max(meanNoise, Scatter(means.AsSpan(0, Math.Max(1, from))));
        var half = from;
        while (half < highest && means[half] < height / 2)
        {
            half++;
        }

        var foot = half;
        while (foot > 0 && means[foot] > Math.Max(0.1 * height, noise))
        {
            foot--;
        }

        var before = 0.0;
        for (var index = from; index < half - (int)(0.008 * hz); index++)
        {
            before = Math.Max(before, means[index]);
        }

        var (edges, armed) = (1, false);
        for (var index = half; index <= to; index++)
        {
            edges += armed && means[index] > height / 2 ? 1 : 0;
            armed = means[index] < height / 4 || (armed && means[index] <= height / 2);
        }

        return new CoarseStep(
            half, Math.Max(0, foot - (int)(0.0015 * hz)), height, Math.Max(0, height) / noise, before > Math.Max(6 * noise, 0.3 * height), edges);
    }

    /// <summary>The level from 5 to 40 ms behind a change over its background: the median of 2 ms means.</summary>
    public double? LevelBehind(CoarseStep step, PeriodicBackground background, int beginning)
    {
        var width = (int)(0.002 * hz);
        var levels = new List<double>();
        for (var at = step.Index + (int)(0.005 * hz); at + width <= Math.Min(Samples.Length, step.Index + (int)(0.04 * hz)); at += width)
        {
            var sum = 0.0;
            for (var index = at; index < at + width; index++)
            {
                sum += Samples[index] - background.At((index - beginning) / hz);
            }

            levels.Add(sum / width);
        }

        levels.Sort();
        return levels.Count >= 5 ? levels[levels.Count / 2] : null;
    }

    private double[] Differences(double lag)
    {
        var (whole, part) = ((int)lag, lag - Math.Floor(lag));
        var differences = new double[Samples.Length];
        for (var index = whole + 1; index < differences.Length; index++)
        {
            differences[index] = Samples[index] - ((1 - part) * Samples[index - whole]) - (part * Samples[index - whole - 1]);
        }

        return differences;
    }

    private static double[] Averaged(double[] values, int width)
    {
        var sums = new double[values.Length + 1];
        for (var index = 0; index < values.Length; index++)
        {
            sums[index + 1] = sums[index] + values[index];
        }

        var averages = new double[values.Length];
        for (var index = 0; index < values.Length; index++)
        {
            var (low, high) = (Math.Max(0, index - (width / 2)), Math.Min(values.Length, index - (width / 2) + width));
            averages[index] = (sums[high] - sums[low]) / (high - low);
        }

        return averages;
    }

    // From second differences, which hum and steps hardly enter: the median of |x1 - 2 x2 + x3| is 0.6745 sqrt(6) sd.
    private static double NoiseOf(double[] samples)
    {
        var every = Math.Max(1, samples.Length / MostForMedian);
        var differences = new List<double>(MostForMedian + 1);
        for (var index = 0; index + 2 < samples.Length; index += every)
        {
            differences.Add(Math.Abs(samples[index] - (2 * samples[index + 1]) + samples[index + 2]));
        }

        return Median(differences) / (0.6745 * Math.Sqrt(6));
    }

    private static double Scatter(ReadOnlySpan<double> values)
    {
        var every = Math.Max(1, values.Length / MostForMedian);
        var sizes = new List<double>(MostForMedian + 1);
        for (var index = 0; index < values.Length; index += every)
        {
            sizes.Add(Math.Abs(values[index]));
        }

        return Median(sizes) / 0.6745;
    }

    private static double Median(List<double> values) =>
        values.Count == 0 ? 0 : ArrayStatistics.OrderStatisticInplace([.. values], (values.Count / 2) + 1);
}
