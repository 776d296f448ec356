using Tarry.Findings.Comparisons;
using Tarry.Findings.Conditions;
using Tarry.Findings.Quality;
using Tarry.Metrology;
using Tarry.Statistics.Censoring;

namespace Tarry.Findings.Tests.Conditions;

/// <summary>A camera of 240 frames a second: press and answer are each seen in the first frame behind them.</summary>
public class CensoredFindingsTests
{
    private const double FrameMs = 1000.0 / 240;

    [Theory]
    [InlineData(0.02)]
    [InlineData(0.5)]
    [InlineData(0.98)]
    public void Intervals_OfPressesInStepWithTheCamera_HoldTheTruth(double phase)
    {
        // Every press at the same part of a frame: the middles are all off by the same.
        var study = new SyntheticStudy(3);
        for (var sitting = 1; sitting <= 3; sitting++)
        {
            study.AddBounded($"s{sitting}", "quill", [.. Enumerable.Range(0, 300).Select(_ => Seen(phase * FrameMs, 11))]);
        }

        var condition = study.Analyse().Conditions.Single();
        foreach (var (outcome, method) in new[] { (condition.Mean, MethodName.MeanBetweenBounds), (condition.Median, MethodName.QuantileBetweenBounds), (condition.P95, MethodName.QuantileBetweenBounds) })
        {
            var estimate = Assert.IsType<Estimate<Latency>>(outcome);
            Assert.True(estimate.Interval.Contains(Latency.FromMilliseconds(11)));
            Assert.InRange(estimate.Interval.High.Milliseconds - estimate.Interval.Low.Milliseconds, FrameMs, 2.5 * FrameMs);
            Assert.Equal(method, estimate.Method);
        }

        Assert.All(condition.Sessions, session => Assert.True(((Estimate<Latency>)session.Mean).Interval.Contains(Latency.FromMilliseconds(11))));
        Assert.Contains(condition.Cautions, caution => caution.Kind == CautionKind.IntervalCensored);
    }

    [Fact]
    public void Intervals_OfManyPresses_AreNeverNarrowerThanTheFramesAllow()
    {
        var generator = new SeededGenerator(4);
        var study = new SyntheticStudy(4);
        for (var sitting = 1; sitting <= 3; sitting++)
        {
            study.AddBounded($"s{sitting}", "quill", [.. Enumerable.Range(0, 5_000).Select(_ => Seen(FrameMs * generator.NextDouble(), 6 + (8 * generator.NextDouble())))]);
        }

        var condition = study.Analyse().Conditions.Single();
        var mean = (Estimate<Latency>)condition.Mean;
        Assert.True(mean.Interval.Contains(Latency.FromMilliseconds(10)));
        Assert.InRange(mean.Interval.High.Milliseconds - mean.Interval.Low.Milliseconds, 2 * FrameMs, 2.5 * FrameMs);
        Assert.True(((Estimate<Latency>)condition.Median).Interval.Contains(Latency.FromMilliseconds(10)));
        Assert.True(((Estimate<Latency>)condition.P95).Interval.Contains(Latency.FromMilliseconds(13.6)));
        Assert.True(((Estimate<LatencyDifference>)condition.StandardDeviation).Interval.Contains(LatencyDifference.FromMilliseconds(8 / Math.Sqrt(12))));
        Assert.True(((Estimate<LatencyDifference>)condition.Spread).Interval.Contains(LatencyDifference.FromMilliseconds(7.2)));
    }

    [Fact]
    public void WhatRestsOnExactPlaces_OfIntervals_IsNotClaimed()
    {
        var generator = new SeededGenerator(6);
        var study = new SyntheticStudy(6) { WithShapes = true };
        for (var sitting = 1; sitting <= 2; sitting++)
        {
            study.AddBounded($"s{sitting}", "board", [.. Enumerable.Range(0, 400).Select(_ => Seen(FrameMs * generator.NextDouble(), 6))]);
            study.AddBounded($"s{sitting}", "quill", [.. Enumerable.Range(0, 400).Select(_ => Seen(FrameMs * generator.NextDouble(), 6 + (8 * generator.NextDouble())))]);
        }

        var condition = study.Analyse(play: Tarry.Findings.Play.PlaySettings.Of(null)).Conditions.Single(one => one.Id == "quill");
        Assert.Null(condition.Shape);
        Assert.Null(condition.BlockWidth);
        Assert.Null(condition.DeviceOnly?.Density);
        Assert.Null(condition.ReportInterval!.Interval);
        Assert.Equal(Statistics.SlotGrid.ReportIntervalReason.LatenciesAreIntervals, condition.ReportInterval.Unidentified!.Reason);
    }

    [Fact]
    public void Difference_ThatFramesAloneCanMake_IsNotTold()
    {
        // Alike devices; the presses of one come just behind a frame, of the other just before one: their middles differ by a frame.
        var study = new SyntheticStudy(5);
        for (var sitting = 1; sitting <= 4; sitting++)
        {
            study.AddBounded($"s{sitting}", "quill", [.. Enumerable.Range(0, 300).Select(_ => Seen(0.05 * FrameMs, 11))]);
            study.AddBounded($"s{sitting}", "moth", [.. Enumerable.Range(0, 300).Select(_ => Seen(0.95 * FrameMs, 11))]);
        }

        var comparison = study.Analyse().Comparisons.Single();
        var difference = (Estimate<LatencyDifference>)comparison.Difference;
        Assert.Equal(Verdict.Undecided, comparison.Verdict);
        Assert.Null(comparison.Needed);
        Assert.Equal(MethodName.DifferenceOfBounds, difference.Method);
        Assert.True(difference.Interval.Contains(LatencyDifference.FromMilliseconds(0)));
        Assert.NotEqual(0, difference.Value.Milliseconds, 1);
    }

    [Fact]
    public void Difference_OfSeveralFrames_IsTold()
    {
        var generator = new SeededGenerator(6);
        var study = new SyntheticStudy(6);
        for (var sitting = 1; sitting <= 4; sitting++)
        {
            study.AddBounded($"s{sitting}", "quill", [.. Enumerable.Range(0, 300).Select(_ => Seen(FrameMs * generator.NextDouble(), 11 + generator.NextDouble()))]);
            study.AddBounded($"s{sitting}", "moth", [.. Enumerable.Range(0, 300).Select(_ => Seen(FrameMs * generator.NextDouble(), 41 + generator.NextDouble()))]);
        }

        Assert.Equal(Verdict.Faster, study.Analyse().Comparisons.Single().Verdict);
    }

    /// <summary>What is known of a latency when the press comes a part of a frame behind one.</summary>
    private static CensoredValue Seen(double pressMs, double latencyMs)
    {
        var frames = Math.Ceiling((pressMs + latencyMs) / FrameMs) - Math.Ceiling(pressMs / FrameMs);
        return new CensoredValue((frames - 1) * FrameMs, (frames + 1) * FrameMs);
    }
}
