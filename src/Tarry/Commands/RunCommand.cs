using System.CommandLine;
using Tarry.Output;
using Tarry.Rig.Link;
using Tarry.Rig.Runs;
using Tarry.Rig.SimulatedBench;
using Tarry.Studies;
using Tarry.Studies.Sessions;

namespace Tarry.Commands;

/// <summary><c>tarry run</c>: a live capture.</summary>
internal static class RunCommand
{
    public static Command Create(Terminal terminal)
    {
        var study = StudyArgument.Create();
        var condition = new Option<string>("--condition") { Description = "Condition under test; declare it first.", Required = true }.MustBeName();
        var sitting = new Option<string>("--sitting") { Description = "This set-up of the bench, such as monday.", Required = true }.MustBeName();
        var port = new Option<string>("--port") { Description = "Serial port of the rig, or 'simulated'.", Required = true }.MustNotBeEmpty();
        var json = new Option<bool>("--json") { Description = "Answer as JSON, one line each time the run says where it stands." };
        var options = new RunOptions();
        var echoOptions = new EchoOptions();
        var command = new Command(
            "run",
            "Captures one condition in one sitting, live. Ctrl-C stops and loses nothing; the same command goes on.\n\n"
            + "Before you wire: isolate the rig's contact (optocoupler), never 5 V on a 3.3 V pad, mind lithium cells and the\n"
            + "soldering iron, and keep a flashing target small: fast flashes can trigger photosensitive epilepsy. Follow your\n"
            + "local rules, and ask a qualified person where you are not sure.\n\n"
            + "Example: tarry run pads --condition quill-usb --sitting monday --port /dev/ttyACM0 --trials 1500")
        {
            study, condition, sitting, port, json,
        };
        options.AddTo(command);
        echoOptions.AddTo(command);
        command.SetAction((parsed, cancellation) => Task.Run(() =>
        {
            var opened = Study.Open(parsed.GetRequiredValue(study));
            var key = new SessionKey(parsed.GetRequiredValue(sitting), parsed.GetRequiredValue(condition));
            var request = options.Request(parsed, key);
            using var held = opened.AcquireLock("tarry run");
            using var line = new ProgressLine(terminal);
            var isEcho = request.Settings.Response == "echo";
            var source = Source(parsed.GetRequiredValue(port), opened, key, request);
            IProgress<RunProgress> progress = parsed.GetValue(json) ? new RunJson(terminal) : new RunProgressLine(line);
            using var echo = echoOptions.Read(parsed, isEcho, (source as SimulatedRigPortSource)?.HostInput);
            var result = new CaptureRun(opened, held, request, source, progress, echo).Run(cancellation);
            line.Clear();
            if (!parsed.GetValue(json))
            {
                RunText.Write(result, terminal);
            }

            return result.Completed ? ExitCode.Done : ExitCode.Stopped;
        }));
        return command;
    }

    private static IRigPortSource Source(string port, Study study, SessionKey key, RunRequest request)
    {
        if (port != "simulated")
        {
            return new SerialRigPortSource(port, forEcho: request.Settings.Response == "echo");
        }

        var rate = study.File.Conditions.FirstOrDefault(condition => condition.Id == key.Condition)?.NominalReportHz;
        return new SimulatedRigPortSource(SimulatedDefault.Device(rate), SimulatedDefault.Rig(request.Settings.Seed));
    }
}
