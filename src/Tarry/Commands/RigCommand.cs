using System.CommandLine;
using Tarry.Output;
using Tarry.Rig.Link;

namespace Tarry.Commands;

/// <summary><c>tarry rig</c>: what concerns the rig alone.</summary>
internal static class RigCommand
{
    public static Command Create(Terminal terminal)
    {
        var ports = new Command("ports", "Lists the serial ports of this machine.\n\nExample: tarry rig ports");
        ports.SetAction(_ =>
        {
            var names = SerialRigPort.List();
            foreach (var name in names)
            {
                terminal.Out.WriteLine(name);
            }

            if (names.Count == 0)
            {
                terminal.Error.WriteLine("tarry: no serial port was found. Plug the rig in; on Linux see that you may open it (group dialout).");
            }

            return ExitCode.Done;
        });
        return new Command("rig", "What concerns the rig alone.") { ports, RigProofCommand.Proof(terminal), RigProofCommand.Calibrate(terminal) };
    }
}
