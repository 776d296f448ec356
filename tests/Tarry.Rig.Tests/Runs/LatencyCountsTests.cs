using Tarry.Rig.Runs;
using Tarry.Rig.SimulatedBench;
using Tarry.Studies.Trials;

namespace Tarry.Rig.Tests.Runs;

public sealed class LatencyCountsTests : IDisposable
{
    private readonly TemporaryStudy temporary = new();

    public void Dispose() => temporary.Dispose();

    [Theory]
    [InlineData(0, 0)]
    [InlineData(0.0999, 0)]
    [InlineData(0.1, 1)]
    [InlineData(0.3, 3)]
    [InlineData(12.3456, 123)]
    [InlineData(-0.05, -1)]
    public void Add_Latency_IsInTheStepThatBeginsAtOrBelowIt(double latencyMs, long step)
    {
        var counts = new LatencyCounts();
        counts.Add(latencyMs);
        Assert.Equal([(step, 1L)], counts.InOrder());
    }

    [Fact]
    public void Run_ThatIsStoppedAndGoesOn_CountsEveryResponseOnce()
    {
        var bench = new SimulatedRigPortSource(new SimulatedDevice { FixedDelayMs = 3, ReportIntervalMs = 8, MissProbability = 0.05 }, new SimulatedRigOptions());
        using (var stop = new CancellationTokenSource())
        {
            var progress = new WhenReported(report =>
            {
                if (report.CapturedOnDisk >= 100)
                {
                    stop.Cancel();
                }
            });
            var stopped = new CaptureRun(temporary.Study, temporary.Held, new RunRequest { Key = TemporaryStudy.Key, Trials = 400 }, bench, progress).Run(stop.Token);
            Assert.False(stopped.Completed);
        }

        var counts = new LatencyCounts();
        var session = new CaptureRun(temporary.Study, temporary.Held, new RunRequest { Key = TemporaryStudy.Key, Trials = 400 }, bench, latencies: counts).Run(TestContext.Current.CancellationToken).Session!;
        var expected = session.Trials.Where(trial => trial.Outcome == Outcome.Response)
            .GroupBy(trial => trial.LatencyTicks!.Value * 10_000 / session.Record.Segments[trial.Segment].TickHz)
            .OrderBy(group => group.Key)
            .Select(group => (group.Key, (long)group.Count()));
        Assert.Equal(expected, counts.InOrder());
        Assert.Equal(session.Trials.Count(trial => trial.Outcome == Outcome.Response), counts.Total);
    }
}
