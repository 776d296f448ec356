using Tarry.Findings.Sticks.Measures;
using Tarry.Findings.Sticks.Recordings;
using Tarry.Statistics.Descriptives;
using Tarry.Statistics.Distributions;
using Tarry.Statistics.Intervals;
using Tarry.Statistics.Linearity;
using Tarry.Statistics.Lines;

namespace Tarry.Findings.Sticks.Rest;

/// <summary>Centre, noise and drift of a stick that nobody touches; the batches of a session are its replicates, because positions in a row depend on each other.</summary>
internal static class RestReadings
{
    private const int Batches = BatchMeansInterval.Batches;
    private const int FewestPositions = 10 * Batches;
    private const double Span = 200;
    private const double MostOfRange = 20;
    private const double WindowMs = 1_000;
    private const double ShortestForDriftMs = 60_000;
    private const double ShortestMs = 6_000;

    // Sixty seconds of positions end before the sixtieth is over, and a hand stops them a little sooner.
    private const double Punctual = 0.99;
    private const string Of = "batches";

    public static void Add(SessionReadings readings, StickRecording recording)
    {
        Add(readings, recording, recording.X, StickPart.X);
        Add(readings, recording, recording.Y, StickPart.Y);
    }

    private static void Add(SessionReadings readings, StickRecording recording, AxisRecording axis, StickPart part)
    {
        if (recording.Count < FewestPositions)
        {
            readings.Refuse(new StickRefusal(StickRefusalReason.TooFewPositions, recording.Count, FewestPositions), OfRest(part));
            return;
        }

        if (recording.DurationMs == 0)
        {
            readings.Refuse(new StickRefusal(StickRefusalReason.TooShort, 0, ShortestMs / 1_000), OfRest(part));
            return;
        }

        var positions = axis.Percent;
        var central = Central(positions);
        if (central.High - central.Low > MostOfRange)
        {
            readings.Refuse(new StickRefusal(StickRefusalReason.NotAtRest, (central.High - central.Low) / 2, MostOfRange / 2), OfRest(part));
            return;
        }

        var (means, variances, middles) = ByBatch(positions, recording.TimesMs);
        var variance = Moments.Mean(variances);
        var noise = Noise(axis, central.Median, means, variance);
        var rounding = RoundingError.Of(positions, axis.Step, noise);
        if (!axis.StepIsShown && central.Low == central.High)
        {
            readings.Refuse(new StickRefusal(StickRefusalReason.StepNotShown), (StickMeasure.CentreOffset, part), (StickMeasure.RestNoise, part), (StickMeasure.CentreDrift, part));
        }
        else
        {
            readings.Add(StickMeasure.CentreOffset, part, means, Of, Math.Max(rounding, axis.Rescaling), axis.Step / 2);
            readings.AddSize(StickMeasure.RestNoise, part, rounding < axis.Step / 2 || axis.Step == 0 ? variances : new double[Batches], Of, mean => Noise(axis, central.Median, means, mean));
            Drift(readings, recording, part, means, middles, rounding);
        }

        var sheppard = axis.Step * axis.Step / 12;
        Resolution(readings, part, variances, sheppard);
        PeakToPeak(readings, recording, axis, part, rounding);
    }

    private static (StickMeasure, StickPart)[] OfRest(StickPart part) =>
    [
        (StickMeasure.CentreOffset, part), (StickMeasure.RestNoise, part), (StickMeasure.RestPeakToPeak, part), (StickMeasure.CentreDrift, part), (StickMeasure.EffectiveResolution, part),
    ];

    // The median, and between which positions all but one in a hundred lie.
    private static (double Low, double Median, double High) Central(double[] positions)
    {
        var sorted = (double[])positions.Clone();
        Array.Sort(sorted);
        return (sorted[sorted.Length / 200], sorted[sorted.Length / 2], sorted[^(1 + (sorted.Length / 200))]);
    }

    // Rounding taken out: by the place of the mean between two steps where it stands still, else by Sheppard's correction.
    private static double Noise(AxisRecording axis, double code, double[] means, double variance)
    {
        var sheppard = Math.Sqrt(Math.Max(variance - (axis.Step * axis.Step / 12), variance / 16));
        return axis.Step > 0 && means.Max() - means.Min() < axis.Step / 4
            ? axis.Step * RoundedNormal.StandardDeviation((Moments.Mean(means) - code) / axis.Step, variance / (axis.Step * axis.Step)) ?? sheppard
            : sheppard;
    }

    // bits = log2(span/sqrt(12 v)), v the variance with rounding in it and at least that of rounding.
    private static void Resolution(SessionReadings readings, StickPart part, double[] variances, double rounding)
    {
        var variance = Moments.Mean(variances);
        if (!(variance > 0))
        {
            readings.Refuse(new StickRefusal(StickRefusalReason.NothingMoves), (StickMeasure.EffectiveResolution, part));
            return;
        }

        var bits = EffectiveBits.FromError(Span, Math.Sqrt(Math.Max(variance, rounding)));
        var error = variance > rounding ? Moments.StandardDeviation(variances) / Math.Sqrt(Batches) / variance / (2 * Math.Log(2)) : 0;
        readings.Found.Add(new StickReading(StickMeasure.EffectiveResolution, part, bits, error, Batches - 1, Batches, Of));
    }

    private static (double[] Means, double[] Variances, double[] MiddlesMinutes) ByBatch(double[] positions, double[] timesMs)
    {
        var (means, variances, middles) = (new double[Batches], new double[Batches], new double[Batches]);
        for (var batch = 0; batch < Batches; batch++)
        {
            var (from, to) = (Start(positions.Length, batch), Start(positions.Length, batch + 1));
            var part = positions.AsSpan(from, to - from);
            means[batch] = Moments.Mean(part);
            middles[batch] = (timesMs[from] + timesMs[to - 1]) / 2 / 60_000;
        }

        // About the straight line of drift, so that noise slower than a batch is in it.
        var line = StraightLine.Fit(middles, means);
        for (var batch = 0; batch < Batches; batch++)
        {
            var (from, to) = (Start(positions.Length, batch), Start(positions.Length, batch + 1));
            for (var i = from; i < to; i++)
            {
                var residual = positions[i] - line.At(timesMs[i] / 60_000);
                variances[batch] += residual * residual / (to - from);
            }
        }

        return (means, variances, middles);
    }

    private static int Start(int length, int batch) => (int)((long)length * batch / Batches);

    private static void PeakToPeak(SessionReadings readings, StickRecording recording, AxisRecording axis, StickPart part, double rounding)
    {
        var ranges = new List<double>();
        var (least, greatest, window) = (double.PositiveInfinity, double.NegativeInfinity, 0);
        for (var i = 0; i < recording.Count; i++)
        {
            if ((int)(recording.TimesMs[i] / WindowMs) != window)
            {
                ranges.Add(greatest - least);
                (least, greatest, window) = (double.PositiveInfinity, double.NegativeInfinity, (int)(recording.TimesMs[i] / WindowMs));
            }

            (least, greatest) = (Math.Min(least, axis.Percent[i]), Math.Max(greatest, axis.Percent[i]));
        }

        if (ranges.Count < 5)
        {
            readings.Refuse(new StickRefusal(StickRefusalReason.TooShort, recording.DurationMs / 1_000, ShortestMs / 1_000), (StickMeasure.RestPeakToPeak, part));
            return;
        }

        if (ranges.TrueForAll(range => range == 0))
        {
            readings.Refuse(new StickRefusal(StickRefusalReason.NothingMoves), (StickMeasure.RestPeakToPeak, part));
            return;
        }

        // Neighbouring windows may depend on each other where the noise is slow.
        var batches = Math.Min(Batches, ranges.Count);
        var means = new double[batches];
        for (var batch = 0; batch < batches; batch++)
        {
            var (from, to) = (ranges.Count * batch / batches, ranges.Count * (batch + 1) / batches);
            means[batch] = ranges.Take(from..to).Average();
        }

        // Both ends are rounded.
        readings.Add(StickMeasure.RestPeakToPeak, part, means, "batches of seconds", 2 * rounding);
    }

    private static void Drift(SessionReadings readings, StickRecording recording, StickPart part, double[] means, double[] middles, double rounding)
    {
        if (recording.DurationMs < Punctual * ShortestForDriftMs)
        {
            readings.Refuse(new StickRefusal(StickRefusalReason.TooShort, recording.DurationMs / 1_000, ShortestForDriftMs / 1_000), (StickMeasure.CentreDrift, part));
            return;
        }

        var line = StraightLine.Fit(middles, means);
        var minutes = recording.DurationMs / 60_000;
        readings.Found.Add(new StickReading(StickMeasure.CentreDrift, part, line.Slope, line.SlopeUncertainty, Batches - 2, Batches, Of)
        {
            Resolution = 2 * rounding / minutes,
            Allowance = 2 * rounding / minutes,
        });
    }
}
