using System.CommandLine;
using Tarry.Output;
using Tarry.Rig.Link;
using Tarry.Rig.Proofs;
using Tarry.Rig.SimulatedBench;
using Tarry.Studies;
using Tarry.Studies.Calibrations;

namespace Tarry.Commands;

/// <summary><c>tarry rig proof</c> and <c>tarry rig calibrate</c>: the rig, wired to itself, shows what it can be trusted with.</summary>
internal static class RigProofCommand
{
    private const string Wiring =
        "Wire the rig to itself first, with no device on it: for edge the press output to the response input, for light a LED\n"
        + "with its resistor on the press output, close to the sensor and shaded. With --through-actuator the loop goes through\n"
        + "the optocoupler, whose delay is then in. The LED flashes fast: cover it, fast flashes can trigger photosensitive\n"
        + "epilepsy. Unplug before you change wires.";

    public static Command Proof(Terminal terminal)
    {
        var options = new ProofOptions();
        var study = new Option<string?>("--study") { Description = "Also compare with this study's newest calibration of the same wiring." };
        var command = new Command(
            "proof",
            $"Proves the rig point by point: own delay, jitter, threshold, clock, lost lines. Exit code 1 if a point fails.\n\n{Wiring}\n\n"
            + "Example: tarry rig proof --port /dev/ttyACM0 --response light")
        {
            study,
        };
        options.AddTo(command);
        command.SetAction((parsed, cancellation) => Task.Run(() =>
        {
            var request = options.Request(parsed);
            var folder = parsed.GetValue(study);
            var earlier = folder is null ? null : Newest(Study.Open(folder), request);
            var result = Run(terminal, options.Port(parsed), request, earlier, cancellation);
            ProofText.Write(result, stored: null, options.AsJson(parsed), terminal);
            return result.Passed ? ExitCode.Done : ExitCode.DataSaysNo;
        }));
        return command;
    }

    public static Command Calibrate(Terminal terminal)
    {
        var options = new ProofOptions();
        var study = StudyArgument.Create();
        var command = new Command(
            "calibrate",
            "Proves the rig and stores its own delay in the study, for the uncertainty of absolute latencies; runs that follow refer to\n"
            + $"it. Nothing is stored if a point fails, and nothing earlier is changed.\n\n{Wiring}\n\n"
            + "Example: tarry rig calibrate pads --port /dev/ttyACM0 --response light")
        {
            study,
        };
        options.AddTo(command);
        command.SetAction((parsed, cancellation) => Task.Run(() =>
        {
            var opened = Study.Open(parsed.GetRequiredValue(study));
            using var held = opened.AcquireLock("tarry rig calibrate");
            var result = Run(terminal, options.Port(parsed), options.Request(parsed), earlier: null, cancellation);
            var stored = result is { Passed: true, Calibration: { } calibration } ? opened.AddCalibration(held, calibration) : null;
            ProofText.Write(result, stored, options.AsJson(parsed), terminal);
            if (stored is null)
            {
                terminal.Error.WriteLine("tarry: no calibration was stored, because the rig did not prove itself. Mend what failed and try again.");
            }

            return stored is not null ? ExitCode.Done : ExitCode.DataSaysNo;
        }));
        return command;
    }

    private static ProofResult Run(Terminal terminal, string port, ProofRequest request, RigCalibration? earlier, CancellationToken cancellation)
    {
        IRigPortSource source = port == "simulated"
            ? new SimulatedRigPortSource(SimulatedDefault.Loop, SimulatedDefault.Rig(1))
            : new SerialRigPortSource(port);
        using var line = new ProgressLine(terminal);
        var result = new RigProof(source, request, earlier, new RunProgressLine(line)).Run(cancellation);
        line.Clear();
        return result;
    }

    private static RigCalibration Newest(Study study, ProofRequest request) =>
        study.Calibrations.Select(entry => entry.Calibration).LastOrDefault(calibration =>
            calibration.Response == request.Response
            && calibration.ThroughActuator == request.ThroughActuator
            && (calibration.LightThreshold is null || calibration.LightThreshold == request.LightThreshold))
        ?? throw new UsageException("The study holds no calibration of this wiring.", "Make one with: tarry rig calibrate");
}
