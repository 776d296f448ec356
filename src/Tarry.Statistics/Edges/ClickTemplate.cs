using System.Runtime.Intrinsics;

namespace Tarry.Statistics.Edges;

/// <summary>The mean form of clicks that are alike, and where in a stretch of samples it lies.</summary>
/// <remarks>
/// The clicks are aligned with the mean of all by the maximum of the cross-correlation, interpolated by a parabola, and the mean is
/// made again, three times. The mean has far less noise than a click, so its onset is picked once and holds for all.
/// Common practice in the alignment of repeated waveforms, no published source.
/// </remarks>
public sealed class ClickTemplate
{
    private const int Iterations = 3;
    private const int FewestClicks = 8;
    private const double LeastCorrelation = 0.8;
    private readonly double[] mean;
    private readonly int margin;
    private readonly double onset;

    private ClickTemplate(double[] mean, int margin)
    {
        (this.mean, this.margin) = (mean, margin);
        onset = Onset(mean);
    }

    /// <summary>The template of clicks; null where there are fewer than eight, or they are not alike.</summary>
    /// <param name="clicks">Stretches of equal length, each with its click at about the same place.</param>
    /// <param name="margin">By how many samples at most a click lies elsewhere.</param>
    public static ClickTemplate? Of(IReadOnlyList<float[]> clicks, int margin)
    {
        ArgumentNullException.ThrowIfNull(clicks);
        if (clicks.Count < FewestClicks)
        {
            return null;
        }

        var length = clicks[0].Length - (2 * margin);
        var template = new ClickTemplate(Mean(clicks, [.. clicks.Select(_ => (double)margin)], length), margin);
        var correlations = new double[clicks.Count];
        for (var iteration = 0; iteration < Iterations; iteration++)
        {
            var lags = new double[clicks.Count];
            for (var index = 0; index < clicks.Count; index++)
            {
                (lags[index], correlations[index]) = template.Align(clicks[index]);
            }

            template = new ClickTemplate(Mean(clicks, lags, length), margin);
        }

        Array.Sort(correlations);
        return correlations[correlations.Length / 2] >= LeastCorrelation ? template : null;
    }

    /// <summary>Where in a stretch the click begins, in samples and parts of them; null where it does not look like the others.</summary>
    public double? OnsetIn(float[] click)
    {
        ArgumentNullException.ThrowIfNull(click);
        var (lag, correlation) = Align(click);
        return correlation >= LeastCorrelation / 2 ? lag + onset : null;
    }

    private static double[] Mean(IReadOnlyList<float[]> clicks, double[] lags, int length)
    {
        var sum = new double[length];
        for (var index = 0; index < clicks.Count; index++)
        {
            var whole = (int)Math.Floor(lags[index]);
            var part = lags[index] - whole;
            for (var at = 0; at < length; at++)
            {
                var from = Math.Clamp(whole + at, 0, clicks[index].Length - 2);
                sum[at] += ((1 - part) * clicks[index][from]) + (part * clicks[index][from + 1]);
            }
        }

        return [.. sum.Select(value => value / clicks.Count)];
    }

    private static double Onset(double[] mean)
    {
        // Up to the peak: what follows it, the decay, is not what the onset is told from.
        var peak = Array.IndexOf(mean, mean.MaxBy(Math.Abs));
        return OnsetPicker.Pick(mean.AsSpan(0, Math.Min(mean.Length, peak + 8))) ?? peak;
    }

    private (double Lag, double Correlation) Align(float[] click)
    {
        var energy = 0.0;
        foreach (var value in mean)
        {
            energy += value * value;
        }

        var products = Products(click);
        var best = Array.IndexOf(products, products.Max());
        var own = 0.0;
        for (var at = 0; at < mean.Length; at++)
        {
            own += (double)click[best + at] * click[best + at];
        }

        var correlation = own > 0 && energy > 0 ? products[best] / Math.Sqrt(own * energy) : 0;
        if (best == 0 || best == products.Length - 1)
        {
            return (best, correlation);
        }

        var (left, middle, right) = (products[best - 1], products[best], products[best + 1]);
        var curvature = left - (2 * middle) + right;
        return (curvature < 0 ? best + ((left - right) / (2 * curvature)) : best, correlation);
    }

    // Four lags at a time: each sum is still made in the order of the samples, so that it is the same on every machine.
    private double[] Products(float[] click)
    {
        var samples = new double[click.Length];
        SampleConversion.Widen(click, samples);
        var products = new double[(2 * margin) + 1];
        var lag = 0;
        for (; lag + 16 <= products.Length; lag += 16)
        {
            var (one, two, three, four) = (Vector256<double>.Zero, Vector256<double>.Zero, Vector256<double>.Zero, Vector256<double>.Zero);
            for (var at = 0; at < mean.Length; at++)
            {
                var weight = Vector256.Create(mean[at]);
                var here = samples.AsSpan(lag + at, 16);
                one += weight * Vector256.Create(here);
                two += weight * Vector256.Create(here[4..]);
                three += weight * Vector256.Create(here[8..]);
                four += weight * Vector256.Create(here[12..]);
            }

            one.CopyTo(products, lag);
            two.CopyTo(products, lag + 4);
            three.CopyTo(products, lag + 8);
            four.CopyTo(products, lag + 12);
        }

        for (; lag < products.Length; lag++)
        {
            for (var at = 0; at < mean.Length; at++)
            {
                products[lag] += mean[at] * samples[lag + at];
            }
        }

        return products;
    }
}
