using System.CommandLine;
using Tarry.Output;
using Tarry.Rig.HostEvents;

namespace Tarry.Commands;

/// <summary><c>tarry host</c>: the input devices of the machine that the program runs on.</summary>
internal static class HostCommand
{
    public static Command Create(Terminal terminal) => new("host", "The input devices of this computer: what they are, when their reports come.")
    {
        Devices(terminal), HostWatchCommand.Create(terminal), HostRecordCommand.Create(terminal), Check(terminal),
    };

    /// <summary>The device that a command reads, as <c>tarry host devices</c> lists it.</summary>
    public static Argument<string> DeviceArgument() =>
        new Argument<string>("DEVICE") { Description = "The device's path, as 'tarry host devices' lists it." }.MustNotBeEmpty();

    private static Command Devices(Terminal terminal)
    {
        var json = new Option<bool>("--json") { Description = "Answer as JSON." };
        var command = new Command(
            "devices",
            "Lists the input devices of this computer, with their buttons and axes.\n\n"
            + "Caution: who may read input devices can read keyboards, passwords too. Give yourself the one device, not all.\n\n"
            + "Example: tarry host devices")
        {
            json,
        };
        command.SetAction(parsed =>
        {
            var devices = HostInput.OfThisMachine().List();
            if (parsed.GetValue(json))
            {
                HostInputJson.Write(devices, terminal);
            }
            else
            {
                HostInputText.Write(devices, terminal);
            }

            return ExitCode.Done;
        });
        return command;
    }

    private static Command Check(Terminal terminal)
    {
        var command = new Command(
            "check",
            "Tries step by step what reading this computer's input devices takes, and says how each step went. It keeps nothing of what\n"
            + "it reads. Exit code 1 if a step failed.\n\n"
            + "Example: tarry host check");
        command.SetAction(_ =>
        {
            var all = true;
            foreach (var step in HostInput.OfThisMachine().Check())
            {
                terminal.Out.WriteLine($"{(step.Worked ? "done" : "not ")}  {step.What}: {step.Found}");
                all &= step.Worked;
            }

            return all ? ExitCode.Done : ExitCode.DataSaysNo;
        });
        return command;
    }
}
