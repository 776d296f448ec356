using Tarry.Findings.Quality;
using Tarry.Metrology;
using Tarry.Studies.Sessions;
using Tarry.Studies.Trials;

namespace Tarry.Findings.Tests.Quality;

public class RunCautionsTests
{
    private const int TickHz = 1_000_000;

    [Fact]
    public void Of_FewCleanTrialsWithoutAClockFit_SaysNothingYet() =>
        Assert.Empty(RunCautions.Of(Session(60, _ => 0), 1000));

    [Fact]
    public void Of_StepInMidRun_IsAChangePointWhereItIs()
    {
        var caution = Assert.Single(RunCautions.Of(Session(800, sequence => sequence > 500 ? 3 : 0), 1000), caution => caution.Kind == CautionKind.ChangePoint);
        Assert.InRange(caution.Numbers["sequence"], 480, 520);
        Assert.InRange(caution.Numbers["step_ms"], 2.7, 3.3);
    }

    [Fact]
    public void Of_PressesThatGoMissing_SaysWhatThatDoesToTheMean()
    {
        var session = Session(400, _ => 0);
        var trials = session.Trials.Select(trial => trial.Sequence % 20 == 0 ? trial with { Outcome = Outcome.Missed, LatencyTicks = null, Edges = 0 } : trial);
        var kinds = RunCautions.Of(session with { Trials = [.. trials] }, 1000).Select(caution => caution.Kind).ToList();
        Assert.Contains(CautionKind.MissedShare, kinds);
        Assert.Contains(CautionKind.LossFavours, kinds);
    }

    /// <summary>Latencies of 5 ms and up to 4 ms more, at presses 70 to 120 ms apart.</summary>
    private static SessionData Session(int count, Func<long, double> addedMs)
    {
        var random = new SeededGenerator(5);
        var press = 0L;
        var trials = Enumerable.Range(1, count).Select(sequence =>
        {
            press += 70_000 + random.NextInt32(50_001);
            var latencyMs = 5 + (4 * random.NextDouble()) + addedMs(sequence);
            return new Trial(sequence, 0, press, (long)(latencyMs * TickHz / 1000), null, Outcome.Response, TrialFlags.None, 1);
        });
        var record = new SessionRecord { Key = new SessionKey("monday", "pad"), Segments = [new Segment(1, 1, TickHz, null)] };
        return new SessionData(record, [.. trials], Sealed: false);
    }
}
