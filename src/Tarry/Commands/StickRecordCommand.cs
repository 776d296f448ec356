using System.CommandLine;
using Tarry.Output;
using Tarry.Rig.Link;
using Tarry.Rig.SimulatedBench;
using Tarry.Rig.Sticks;
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
        var seed = SeedOption.Create();
        var recover = new Option<bool>("--recover") { Description = "Seal what a recording that broke off has left." };
        var command = new Command(
            "record",
            "Does a procedure with the rig reading the wipers, and says what to do now. Ctrl-C stops and loses nothing; after a crash\n"
            + "--recover seals what is there.\n\n"
            + "Before you wire: 5 V on a 3.3 V pad can destroy it, and with a voltage at AREF '--reference supply' joins that to the\n"
            + "board's supply: never give both. Take a lithium cell out before you solder. Follow your local rules, and ask a qualified\n"
            + "person where you are not sure.\n\n"
            + "Example: tarry stick record pads --condition quill-stick --sitting monday --procedure rim-sweep --port /dev/ttyACM0")
        {
            study, condition, sitting, procedure, port, interval, reference, direction, uncertainty, seed, recover,
        };
        command.SetAction((parsed, cancellation) => Task.Run(() =>
        {
            var opened = Study.Open(parsed.GetRequiredValue(study));
            var done = StickProcedures.Find(parsed.GetRequiredValue(procedure))!.Value;
            var key = new SessionKey(parsed.GetRequiredValue(sitting), parsed.GetRequiredValue(condition), done);
            var file = Path.Combine(parsed.GetRequiredValue(study), "recordings", $"{key}.txt");
            using var held = opened.AcquireLock("tarry stick record");
            Require(opened, key, file, parsed.GetValue(recover), parsed.GetValue(interval));
            var complete = true;
            if (!parsed.GetValue(recover))
            {
                var request = new StickRecordingRequest(done)
                {
                    IntervalUs = (uint)parsed.GetValue(interval),
                    AgainstSupply = parsed.GetValue(reference) == "supply",
                    YIsDown = parsed.GetValue(direction) == "down",
                    StimulusUncertainty = parsed.GetValue(uncertainty),
                };
                var source = Source(parsed.GetValue(port) ?? throw new UsageException("No port is given.", "Say --port PORT; 'tarry rig ports' lists them."), done, parsed.GetValue(seed));
                complete = Record(terminal, source, request, file, cancellation);
                if (!File.Exists(file))
                {
                    return ExitCode.Stopped;
                }
            }

            var (session, import) = RecordedStick.Read(file, key);
            opened.SealImported(held, [session], import, []);
            terminal.Out.WriteLine(Invariant($"{key}: {session.Samples.Count} positions sealed, {session.Record.RefusedTotal} lines refused. The recording stays in recordings/."));
            foreach (var text in session.Record.Events)
            {
                terminal.Out.WriteLine($"  {text}");
            }

            ImportText.Judge(session, terminal);
            return complete ? ExitCode.Done : ExitCode.Stopped;
        }));
        return command;
    }

    private static bool Record(Terminal terminal, IRigPortSource source, StickRecordingRequest request, string file, CancellationToken cancellation)
    {
        if (StickGuide.Of(request.Procedure).Caution is { } caution)
        {
            terminal.Error.WriteLine($"caution: {caution}");
        }

        Directory.CreateDirectory(Path.GetDirectoryName(file)!);
        using var line = new ProgressLine(terminal);
        return new StickRecorder(source, request, new StickProgressLine(line)).Run(file, cancellation);
    }

    private static void Require(Study study, SessionKey key, string file, bool recovers, int interval)
    {
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

        if (interval is < 625 or > 1_000_000)
        {
            throw new UsageException(Invariant($"Readings cannot be {interval} us apart."), "Give --interval-us 625 to 1000000.");
        }
    }

    private static IRigPortSource Source(string port, StickProcedure procedure, uint seed) => port == SimulatedDefault.Port
        ? new SimulatedRigPortSource(SimulatedDefault.Loop, SimulatedDefault.Rig(seed) with { StickHand = SimulatedDefault.Stick(procedure) })
        : new SerialRigPortSource(port);
}
