using Tarry.Findings.Conditions;

namespace Tarry.Findings.Tests.Conditions;

public sealed class RunChartTests
{
    [Fact]
    public void Analyse_Session_IsCutIntoBatchesThatHoldEveryTrialOnce()
    {
        var chart = Of(new SyntheticStudy(1) { Trials = 1499 }.Add(1, ("pad", 7, 8)))!;
        Assert.Equal(1, chart.Batches[0].FirstSequence);
        Assert.Equal(1499, chart.Batches[^1].LastSequence);
        Assert.All(chart.Batches.Zip(chart.Batches.Skip(1)), pair => Assert.Equal(pair.First.LastSequence + 1, pair.Second.FirstSequence));
        Assert.All(chart.Batches, batch => Assert.InRange(batch.MedianMs, batch.P05Ms, batch.P95Ms));
        Assert.Equal(48, chart.Batches.Count);
    }

    [Fact]
    public void Analyse_Ramp_GivesTheQuantilesOfEachBatch()
    {
        // 100 values 1 to 100: four batches of 25, each with the quantiles of 25 successive whole numbers (type 7).
        var chart = Of(new SyntheticStudy(1).AddSession("a", "pad", [.. Enumerable.Range(1, 100).Select(i => (double)i)]))!;
        Assert.Equal(4, chart.Batches.Count);
        Assert.Equal(13, chart.Batches[0].MedianMs, 9);
        Assert.Equal(2.2, chart.Batches[0].P05Ms, 9);
        Assert.Equal(98.8, chart.Batches[3].P95Ms, 9);
    }

    [Fact]
    public void Analyse_LateResponses_AreKeptAsPointsTheLatestFirstWhereTooMany()
    {
        var study = new SyntheticStudy(2) { Trials = 2000 };
        double[] latencies = [.. study.Draw(7, 1).Select((latency, i) => i % 10 == 0 ? latency + 20 + (i * 0.01) : latency)];
        var chart = Of(study.AddSession("a", "pad", latencies))!;
        Assert.Equal(200, chart.LateCount);
        Assert.Equal(60, chart.Late.Count);
        Assert.All(chart.Late, point => Assert.Equal(latencies[point.Sequence - 1], point.LatencyMs));
        Assert.Contains(chart.Late, point => point.LatencyMs == latencies.Max());
    }

    [Fact]
    public void Analyse_FewTrials_HaveNoRunChart() =>
        Assert.Null(Of(new SyntheticStudy(1).AddSession("a", "pad", [.. Enumerable.Range(0, 49).Select(i => i * 0.1)])));

    private static RunChart? Of(SyntheticStudy study) => study.Analyse().Conditions[0].Sessions[0].RunChart;
}
