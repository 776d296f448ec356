using Tarry.Metrology;
using Tarry.Statistics.Deconvolution;
using Tarry.Statistics.Descriptives;
using Tarry.Statistics.Intervals;
using Tarry.Statistics.Play;
using Tarry.Statistics.Quantiles;
using Tarry.Statistics.Shapes;
using Tarry.Statistics.SlotGrid;

namespace Tarry.Benchmarks;

/// <summary>The device part of an analysis on two conditions of the study; each step returns a number that depends on all of it.</summary>
internal sealed class DeviceAnalysis(Study study, PressTimes presses)
{
    /// <summary>Those that the baseline has, too: waits of 2 and of 6 ms.</summary>
    public static readonly int[] Conditions = [1, 5];

    private const int Reference = 0;
    private const double SlotMs = 1;
    private const double ResolutionMs = 0.001;
    private const int BandReplicates = 60;
    private const int HitResamples = 100;
    private const int CurvePoints = 100;
    private const double FrameMs = 1000.0 / 60;

    private static readonly double[] Levels = [0.05, 0.5, 0.95, 0.99];
    private static readonly double[] Windows = [FrameMs / 2, FrameMs, 2 * FrameMs];
    private static readonly double[] Players = [0, 10];

    private readonly IReadOnlyList<PressSeries>[] series = [.. PressTimes.NominalMs.Select((_, device) => presses.Of(device))];

    public IReadOnlyList<(string Step, Func<double> Run)> Steps =>
    [
        ("line spectrum", LineSpectrum),
        ("shape fits", ShapeFits),
        ("deconvolution", Deconvolution),
        ("play", Play),
        ("intervals", Intervals),
    ];

    private double LineSpectrum()
    {
        var sum = 0.0;
        for (var device = 0; device < series.Length; device++)
        {
            sum += ((ReportIntervalFound)ReportIntervalSearch.Of(series[device], chain: null, PressTimes.NominalMs[device])).IntervalMs;
        }

        return sum;
    }

    private double ShapeFits()
    {
        var sum = 0.0;
        foreach (var condition in Conditions)
        {
            var shape = ShapeChoice.Of([.. Sorted(condition).Select(session => new SessionLatencies(session, ResolutionMs))]).Best.Shape;
            sum += shape.Mean + Math.Sqrt(shape.Variance);
        }

        return sum;
    }

    private double Deconvolution()
    {
        var sum = 0.0;
        foreach (var condition in Conditions)
        {
            var delay = new MeasuredKernelDeconvolution(Sessions(condition), Sessions(Reference), SlotMs, seed: 1).Find(BandReplicates);
            var (mean, square, band) = (0.0, 0.0, 0.0);
            for (var i = 0; i < delay.PerMs.Count; i++)
            {
                var (at, mass) = (delay.From + (i * delay.Step), delay.PerMs[i] * delay.Step);
                mean += mass * at;
                square += mass * at * at;
                band += (delay.High[i] - delay.Low[i]) * delay.Step;
            }

            sum += mean + Math.Sqrt(square - (mean * mean)) + band;
        }

        return sum;
    }

    private double Play()
    {
        var curve = Enumerable.Range(1, CurvePoints).Select(point => point * (2 * FrameMs * 1.2 / CurvePoints)).ToArray();
        var settings = Players.SelectMany(player => Windows.Select(window => (window, player))).ToArray();
        var sum = 0.0;
        foreach (var condition in Conditions)
        {
            var hits = new HitProbability([.. Sorted(condition).Select(session => new TimingSession(session))]);
            sum += Players.Sum(player => hits.Curve(curve, player).Sum());
            sum += settings.Sum(setting => hits.Best(setting.window, setting.player).Share);
            sum -= HitOptimism.Of(hits, settings, HitResamples, SeededGenerator.ForPart(1, (ulong)condition)).Sum();
        }

        return sum;
    }

    private double Intervals()
    {
        var sum = 0.0;
        foreach (var condition in Conditions)
        {
            double[] means = [.. Sessions(condition).Select(session => Moments.Mean(session))];
            var variance = Moments.Variance(means);
            var mean = StudentInterval.Of(Moments.Mean(means), Math.Sqrt(variance / Study.Sessions), Study.Sessions - 1);
            sum += mean.Low + mean.High;
            var sorted = study.All(condition);
            Array.Sort(sorted);
            foreach (var level in Levels)
            {
                var limits = SessionQuantileInterval.Of(OrderStatisticInterval.Of(sorted, level), SampleQuantile.Of(sorted, level)!.Value, variance, Study.Sessions - 1, Study.Sessions);
                sum += limits.Low!.Value + limits.High!.Value;
            }
        }

        return sum;
    }

    private double[][] Sessions(int condition) => study.InOrder[(condition * Study.Sessions)..((condition + 1) * Study.Sessions)];

    private double[][] Sorted(int condition) => Array.ConvertAll(Sessions(condition), session => session.Order().ToArray());
}
