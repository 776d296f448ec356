using Tarry.Findings.DeviceOnly;
using Tarry.Metrology;

namespace Tarry.Findings.Tests.DeviceOnly;

/// <summary>A device alone is Uniform(0, report interval): its standard deviation is the interval over the root of 12.</summary>
public sealed class DeviceDeviationTests
{
    private static readonly double[] Intervals = [1, 2, 4, 8];

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    [InlineData(4)]
    public void Of_KnownTruth_CoversAsOftenAsItSays(int sittings)
    {
        const int studies = 400;
        var covered = new int[Intervals.Length];
        for (var study = 0; study < studies; study++)
        {
            var deviations = Deviations(new SyntheticStudy((ulong)((sittings * 10_000) + study)) { Trials = 240 }, sittings, Intervals);
            for (var i = 0; i < Intervals.Length; i++)
            {
                covered[i] += Holds(deviations.Of(Name(Intervals[i])), Intervals[i] / Math.Sqrt(12)) ? 1 : 0;
            }
        }

        // Four binomial standard errors below 0.95; above it the cut at zero and the average of variances may lie.
        Assert.All(covered, count => Assert.InRange(count / (double)studies, 0.906, 1));
        Assert.InRange(covered.Average() / studies, 0.925, 0.995);
    }

    [Fact]
    public void Of_NoMoreThanTheReferenceWithoutItsSlot_IsAtMost()
    {
        // A device without any variation of its own: half of the studies find a variance below zero.
        var bounds = new List<AtMost<LatencyDifference>>();
        for (ulong study = 0; study < 60; study++)
        {
            var outcome = Deviations(new SyntheticStudy(study) { Trials = 240 }, 3, [0, 2, 4]).Of(Name(0));
            switch (outcome)
            {
                case AtMost<LatencyDifference> bound:
                    bounds.Add(bound);
                    Assert.InRange(bound.Bound.Milliseconds, 0.01, 1.5);
                    break;
                case Estimate<LatencyDifference> estimate:
                    Assert.True(double.IsFinite(estimate.Value.Milliseconds));
                    break;
            }
        }

        Assert.InRange(bounds.Count, 15, 45);
    }

    private static DeviceDeviations Deviations(SyntheticStudy study, int sittings, double[] intervals)
    {
        study.Add(sittings, [("ref", 5, 1), .. intervals.Select(interval => (Name(interval), 7.0, interval))]);
        var references = study.Samples.Where(sample => sample.Key.Condition == "ref").ToDictionary(sample => sample.Key.Sitting);
        return new DeviceDeviations(
            intervals.ToDictionary(
                Name,
                interval => (IReadOnlyList<SittingPair>)[.. study.Samples
                    .Where(sample => sample.Key.Condition == Name(interval))
                    .Select(sample => new SittingPair(sample.Key.Sitting, sample, references[sample.Key.Sitting]))]),
            1);
    }

    private static bool Holds(EstimateOutcome<LatencyDifference> outcome, double truth) => outcome switch
    {
        Estimate<LatencyDifference> estimate => estimate.Interval.Contains(LatencyDifference.FromMilliseconds(truth)),
        AtMost<LatencyDifference> bound => truth <= bound.Bound.Milliseconds,
        _ => false,
    };

    private static string Name(double interval) => $"pad-{interval}";
}
