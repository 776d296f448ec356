using System.CommandLine;
using Tarry.Output;
using Tarry.Rig;
using Tarry.Rig.Link;
using Tarry.Rig.SimulatedBench;
using Tarry.Rig.Sticks.Recording;
using Tarry.Studies;
using Tarry.Studies.Sessions;
using Tarry.Studies.Sticks;
using static System.FormattableString;

namespace Tarry.Commands;

/// <summary><c>tarry stick record</c>: a procedure, live, with the rig's converter at the wipers.</summary>
internal static class StickRecordCommand
{
    public static Command Create(Terminal terminal)
    {
        var study = StudyArgument.Create();
        var condition = new Option<string>("--condition") { Description = "Condition under test; declare it first.", Required = true }.MustBeName();
        var sitting = new Option<string>("--sitting") { Description = "This set-up of the bench, such as monday.", Required = true }.MustBeName();
        var procedure = new Option<string>("--procedure") { Description = "What is done; 'tarry stick procedures' explains them.", Required = true };
        procedure.AcceptOnlyFromAmong([.. StickProcedures.Names]);
        var port = new Option<string?>("--port") { Description = "Serial port of the rig, or 'simulated'." }.MustNotBeEmpty();
        var interval = new Option<int>("--interval-us") { Description = "Time between readings, 625 to 1000000.", DefaultValueFactory = _ => 1_000 };
        var reference = new Option<string>("--reference") { Description = "What the greatest reading stands for: aref (the voltage at the board's AREF pin, best the stick's own supply) or supply (the board's).", DefaultValueFactory = _ => "aref" };
        reference.AcceptOnlyFromAmong("aref", "supply");
        var direction = new Option<string>("--y-direction") { Description = "Which way the wiper of y gives more: up (pushed away) or down.", DefaultValueFactory = _ => "up" };
        direction.AcceptOnlyFromAmong("up", "down");
        var uncertainty = new Option<double?>("--stimulus-uncertainty") { Description = "Standard uncertainty of the stimulus: degrees, or a share of the supply." }.TakesNumber();
        var seconds = new Option<double?>("--seconds") { Description = "How long the steps take in all, a quarter of the usual time to ten times as long; 'tarry stick procedures' says the usual." }.TakesNumber(positive: true);
        var ready = new Option<double>("--ready-seconds") { Description = "Time to take hold of the stick before the first step.", DefaultValueFactory = _ => 5 }.TakesNumber();
        var pace = new Option<double?>("--pace") { Description = "Simulated rig: its seconds in one, 1 to watch it as it is; as fast as it goes if not given." }.TakesNumber(positive: true);
        var seed = SeedOption.Create();
        var recover = new Option<bool>("--recover") { Description = "Seal what a recording that broke off has left." };
        var command = new Command(
            "record",
            "Does a procedure with the rig reading the wipers, and says step by step what to do. Ctrl-C stops and loses nothing: what came\n"
            + "is sealed. After a crash --recover seals what is there.\n\n"
            + "Before you wire: 5 V on a 3.3 V pad can destroy it, and with a voltage at AREF '--reference supply' joins that to the\n"
            + "board's supply: never give both. Take a lithium cell out before you solder. Follow your local rules, and ask a qualified\n"
            + "person where you are not sure.\n\n"
            + "Example: tarry stick record pads --condition quill-stick --sitting monday --procedure rim-sweep --port /dev/ttyACM0")
        {
            study, condition, sitting, procedure, port, interval, reference, direction, uncertainty, seconds, ready, pace, seed, recover,
        };
        command.SetAction((parsed, cancellation) => Task.Run(() =>
        {
            var opened = Study.Open(parsed.GetRequiredValue(study));
            var done = StickProcedures.Find(parsed.GetRequiredValue(procedure))!.Value;
            var key = new SessionKey(parsed.GetRequiredValue(sitting), parsed.GetRequiredValue(condition), done);
            using var held = opened.AcquireLock("tarry stick record");
            Require(opened, key, parsed.GetValue(recover), parsed.GetValue(interval));
            var capture = new StickCapture(opened, held, key);
            if (parsed.GetValue(recover))
            {
                Tell(terminal, capture.Seal() ?? throw new RigException($"{StickCapture.FileOf(opened, key)} holds no reading of its procedure.", "Remove it, and record again."));
                return ExitCode.Done;
            }

            var request = new StickRecordingRequest(done)
            {
                Seconds = parsed.GetValue(seconds),
                ReadySeconds = parsed.GetValue(ready),
                IntervalUs = (uint)parsed.GetValue(interval),
                AgainstSupply = parsed.GetValue(reference) == "supply",
                YIsDown = parsed.GetValue(direction) == "down",
                StimulusUncertainty = parsed.GetValue(uncertainty),
            };
            var source = Source(parsed.GetValue(port) ?? throw new UsageException("No port is given.", "Say --port PORT; 'tarry rig ports' lists them."), request, parsed.GetValue(seed), parsed.GetValue(pace), cancellation);
            return Record(terminal, capture, source, request, cancellation);
        }));
        return command;
    }

    private static int Record(Terminal terminal, StickCapture capture, IRigPortSource source, StickRecordingRequest request, CancellationToken cancellation)
    {
        if (request.Guide.Caution is { } caution)
        {
            terminal.Error.WriteLine($"caution: {caution}");
        }

        StickCaptureResult result;
        using (var progress = new StickProgressLine(terminal))
        {
            result = capture.Record(source, request, progress, cancellation);
        }

        if (result.Session is { } session)
        {
            Tell(terminal, session);
        }
        else
        {
            terminal.Error.WriteLine("tarry: ended before the first reading of the procedure; nothing was kept");
        }

        return result.IsComplete ? ExitCode.Done : cancellation.IsCancellationRequested ? ExitCode.Stopped : ExitCode.RigOrDiskFailed;
    }

    private static void Tell(Terminal terminal, StickSession session)
    {
        terminal.Out.WriteLine(Invariant($"{session.Record.Key}: {session.Samples.Count} positions sealed, {session.Record.RefusedTotal} lines refused. The recording stays in recordings/."));
        foreach (var text in session.Record.Events)
        {
            terminal.Out.WriteLine($"  {text}");
        }

        ImportText.Judge(session, terminal);
    }

    private static void Require(Study study, SessionKey key, bool recovers, int interval)
    {
        var file = StickCapture.FileOf(study, key);
        if (study.File.Conditions.All(condition => condition.Id != key.Condition))
        {
            throw new UsageException($"The condition {key.Condition} is not declared.", $"Declare it with: tarry condition STUDY {key.Condition} --control stick");
        }

        if (study.StickKeys.Contains(key))
        {
            throw new UsageException($"The session {key} is there already.", "Record into another sitting; what is sealed never changes.");
        }

        if (File.Exists(file) != recovers)
        {
            throw new UsageException(
                recovers ? $"There is no recording {file} to recover." : $"A recording of {key} that broke off is there: {file}",
                recovers ? "Leave --recover out." : "Seal what it holds with --recover, or remove it.");
        }

        if (interval is < (int)StickRecordingRequest.LeastIntervalUs or > (int)StickRecordingRequest.MostIntervalUs)
        {
            throw new UsageException(Invariant($"Readings cannot be {interval} us apart."), "Give --interval-us 625 to 1000000.");
        }
    }

    private static IRigPortSource Source(string port, StickRecordingRequest request, uint seed, double? pace, CancellationToken cancellation)
    {
        if (port != SimulatedDefault.Port)
        {
            return pace is null ? new SerialRigPortSource(port) : throw new UsageException("A rig keeps its own pace.", "Leave --pace out, or say --port simulated.");
        }

        var bench = SimulatedDefault.StickBench(seed, request);
        return pace is { } speed ? new PacedPortSource(bench, speed, TimeProvider.System, cancellation) : bench;
    }
}
