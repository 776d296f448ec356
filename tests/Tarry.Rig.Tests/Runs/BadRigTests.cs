using Tarry.Studies.Sessions;
using Tarry.Rig.Runs;
using Tarry.Rig.SimulatedBench;
using Tarry.Rig.Tests.Link;
using Tarry.Studies.Trials;

namespace Tarry.Rig.Tests.Runs;

/// <summary>A rig or a line that does what it should not, soundly sealed.</summary>
public sealed class BadRigTests : IDisposable
{
    private readonly TemporaryStudy temporary = new();
    private readonly SimulatedRigPortSource bench = new(new SimulatedDevice { FixedDelayMs = 2, ReportIntervalMs = 1 }, new SimulatedRigOptions());

    public void Dispose() => temporary.Dispose();

    [Fact]
    public void Run_TrialThatDoesNotCome_IsAskedForAgain()
    {
        var lost = 0;
        var result = Run(body => body.StartsWith("T 0001 0000001", StringComparison.Ordinal) && lost++ < 5 ? null : body);
        Assert.True(lost > 5);
        Assert.InRange(result.Final.Health.TrialsSentAgain, 5, 20);
        Assert.Equal(100, result.Session!.Trials.Count);
        Assert.True(result.Session.Record.CountsReconciled);
        Assert.DoesNotContain(result.Session.Trials, trial => trial.Outcome == Outcome.Refused);
    }

    [Fact]
    public void Run_LastTrialDoesNotCome_IsAskedForAgain()
    {
        var lost = 0;
        var result = Run(body => body.StartsWith("T 0001 00000064", StringComparison.Ordinal) && lost++ == 0 ? null : body);
        Assert.Equal(100, result.Session!.Trials.Count);
        Assert.Equal(1, result.Final.Health.TrialsSentAgain);
    }

    [Fact]
    public void Run_TrialThatIsGone_IsRecordedAsRefusedAndTheCountsDoNotAgree()
    {
        var result = Run(body =>
            body.StartsWith("T 0001 00000010", StringComparison.Ordinal) || body.StartsWith("T 0001 00000011", StringComparison.Ordinal) ? null
            : body.StartsWith("A ", StringComparison.Ordinal) && body.EndsWith('r') ? "N" + body[1..] + " gone"
            : body);
        var session = result.Session!;
        Assert.Equal(100, session.Trials.Count);
        Assert.Equal([16, 17], session.Trials.Where(trial => trial.Outcome == Outcome.Refused).Select(trial => trial.Sequence));
        Assert.Equal(["seq 16", "seq 17"], session.Record.Refused.Select(item => item.Place));
        Assert.False(session.Record.CountsReconciled);
        Assert.Equal(2, result.Final.Refused);
    }

    [Fact]
    public void Run_TrialSentTwice_IsTakenOnce()
    {
        var first = true;
        var source = new TamperingPortSource(bench, body => body, body =>
        {
            if (!first || !body.StartsWith("p ", StringComparison.Ordinal) || bench.Injected.Count < 20)
            {
                return body;
            }

            // In place of one ping the rig is asked for ten trials that it has sent.
            first = false;
            return $"r {body.AsSpan(2, 2)} 00000005 0a";
        });
        var session = temporary.Run(source, 100).Session!;
        Assert.False(first);
        Assert.Equal(100, session.Trials.Count);
        Assert.Empty(session.Record.Refused);
        Assert.True(session.Record.CountsReconciled);
    }

    [Fact]
    public void Run_TrialSentAgainAndNotTheSame_StopsWithAnError()
    {
        var again = false;
        var source = new TamperingPortSource(
            bench,
            body => again && body.StartsWith("T 0001 00000005", StringComparison.Ordinal) ? body[..^1] + "9" : body,
            body =>
            {
                if (again || !body.StartsWith("p ", StringComparison.Ordinal) || bench.Injected.Count < 20)
                {
                    return body;
                }

                again = true;
                return $"r {body.AsSpan(2, 2)} 00000005 01";
            });
        Assert.Contains("trial 5", Assert.Throws<RigException>(() => temporary.Run(source, 100)).Message, StringComparison.Ordinal);

        // What was captured is kept, and the rig does not go on pressing.
        Assert.True(temporary.Study.Read(TemporaryStudy.Key).Trials.Count >= 15);
        var presses = bench.Injected.Count;
        bench.Pause(TimeSpan.FromSeconds(5), TestContext.Current.CancellationToken);
        Assert.Equal(presses, bench.Injected.Count);
    }

    [Fact]
    public void Run_NumberFarAhead_IsRefusedAndNoTrial()
    {
        var once = true;
        var session = Run(body =>
        {
            if (once && body.StartsWith("T 0001 00000020", StringComparison.Ordinal))
            {
                once = false;
                return body.Replace("T 0001 00000020", "T 0001 00ff0020", StringComparison.Ordinal);
            }

            return body;
        }).Session!;
        Assert.Equal(100, session.Trials.Count);
        Assert.Equal("seq 16711712", Assert.Single(session.Record.Refused).Place);
        Assert.True(session.Record.CountsReconciled);
    }

    [Fact]
    public void Run_CountsThatDoNotAgree_AreSaidAndByHowMuch()
    {
        var session = Run(body => body.StartsWith("D ", StringComparison.Ordinal) ? "D 0001 00000064 00000062 00000002 00000000 count" : body).Session!;
        Assert.False(session.Record.CountsReconciled);
        Assert.Contains("100 trials (98 responses, 2 missed, 0 early), recorded are 100 (100, 0, 0)", Assert.Single(session.Record.Events), StringComparison.Ordinal);
    }

    [Fact]
    public void Run_RunEndThatDoesNotCome_IsSeenByTheHeartbeat()
    {
        var session = Run(body => body.StartsWith("D ", StringComparison.Ordinal) ? null : body).Session!;
        Assert.Equal(100, session.Trials.Count);
        Assert.Null(session.Record.CountsReconciled);
        Assert.Contains("did not come through", Assert.Single(session.Record.Events), StringComparison.Ordinal);
    }

    [Fact]
    public void Run_OtherVersionOfTheProtocol_IsRefusedWithARemedy()
    {
        var failure = Assert.Throws<RigException>(() => Run(body => body.StartsWith("B ", StringComparison.Ordinal) ? body.Remove(7, 2).Insert(7, "02") : body));
        Assert.Contains("firmware", failure.Remedy, StringComparison.Ordinal);
    }

    [Fact]
    public void Run_NoRig_SaysSo() =>
        Assert.Contains("No rig answers", Assert.Throws<RigException>(() => Run(_ => null)).Message, StringComparison.Ordinal);

    [Fact]
    public void Run_RigThatTakesNoCommands_FailsInTime()
    {
        var source = new TamperingPortSource(bench, body => body.StartsWith("A ", StringComparison.Ordinal) ? null : body);
        var request = new RunRequest { Key = TemporaryStudy.Key, Trials = 10, ReturnLimit = TimeSpan.FromSeconds(20) };
        Assert.Contains("takes no commands", Assert.Throws<RigException>(() => temporary.Run(source, request)).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Run_CommandsNoLongerArrive_FailsInTimeAndKeepsWhatCame()
    {
        var source = new TamperingPortSource(
            bench,
            body => body,
            body => bench.Injected.Count > 50 && !body.StartsWith("h ", StringComparison.Ordinal) ? null : body);
        var request = new RunRequest { Key = TemporaryStudy.Key, Trials = 200, ReturnLimit = TimeSpan.FromSeconds(20) };
        Assert.Throws<RigException>(() => temporary.Run(source, request));
        Assert.InRange(temporary.Study.Read(TemporaryStudy.Key).Trials.Count, 50, 75);
    }

    [Fact]
    public void Run_CancelledWhenCommandsNoLongerArrive_Ends()
    {
        using var cancellation = new CancellationTokenSource();
        var source = new TamperingPortSource(bench, body => body, body => cancellation.IsCancellationRequested ? null : body);
        var stopped = temporary.Run(source, 200, cancellation.Token, new WhenReported(report =>
        {
            if (report.Responses > 50)
            {
                cancellation.Cancel();
            }
        }));
        Assert.False(stopped.Completed);
        Assert.InRange(stopped.Final.CapturedOnDisk, 50, 90);
    }

    [Fact]
    public void Run_ParameterRefused_StopsWithTheReason() =>
        Assert.Contains("Range", Assert.Throws<RigException>(() => Run(body => body.StartsWith("A ", StringComparison.Ordinal) && body.EndsWith('c') ? "N" + body[1..] + " range" : body)).Message, StringComparison.Ordinal);

    [Fact]
    public void Run_FirmwareWithoutTheLaterParameters_CapturesAContact()
    {
        Assert.True(Run(OlderFirmware()).Completed);
        Assert.Equal(100, temporary.Study.Read(TemporaryStudy.Key).Trials.Count);
    }

    [Fact]
    public void Run_FirmwareWithoutTheLaterParameters_RefusesAnAxis()
    {
        var axis = new Actuation("axis", new AxisActuation("dac", 0, 65_535, 30_000, 5_000));
        var request = new RunRequest { Key = TemporaryStudy.Key, Trials = 10, Settings = RunRequest.DefaultSettings with { Actuation = axis } };
        Assert.Contains("acti", Assert.Throws<RigException>(() => temporary.Run(Older(), request)).Message, StringComparison.Ordinal);
    }

    private static Func<string, string?> OlderFirmware()
    {
        // The rig's own answers of a command come in order; those to the five keys that an older firmware does not know are
        // the last five before it is told to go.
        var answered = 0;
        return body =>
        {
            if (!body.StartsWith("A ", StringComparison.Ordinal) || !body.EndsWith(" c", StringComparison.Ordinal))
            {
                return body;
            }

            return ++answered > 12 ? "N" + body[1..] + " key" : body;
        };
    }

    private TamperingPortSource Older() => new(bench, OlderFirmware());

    private RunResult Run(Func<string, string?> fromRig) => temporary.Run(new TamperingPortSource(bench, fromRig), 100);
}
