using System.CommandLine;
using System.CommandLine.Parsing;
using Tarry.Output;
using Tarry.Rig.HostEvents;
using Tarry.Rig.HostEvents.Echo;

namespace Tarry.Commands;

/// <summary>The options that say which input of the host answers a press.</summary>
internal sealed class EchoOptions
{
    /// <summary>The device of the simulated bench.</summary>
    public const string Simulated = "simulated";

    private readonly Option<string?> device = new("--echo-device") { Description = "With --response echo: the input device of this computer that tells of the press ('tarry host devices'), or 'simulated'." };
    private readonly Option<string?> code = new("--echo-code") { Description = "What of it is the press: a button such as BTN_SOUTH, an axis such as ABS_Z, or bit:N of a raw report. [default: any button]" };
    private readonly Option<int?> level = new("--echo-level") { Description = "With an axis: the value whose crossing is the press." };
    private readonly Option<bool> falling = new("--echo-falling") { Description = "The axis crosses downwards, or the bit falls." };
    private readonly Option<bool> exclusive = new("--echo-exclusive") { Description = "Keep the device's events from other programs during the run (Linux evdev), so that presses do nothing else on the desktop." };

    public void AddTo(Command command)
    {
        foreach (var option in All)
        {
            command.Add(option);
        }
    }

    /// <summary>The echo that was asked for; null for none.</summary>
    /// <param name="parsed">The command line.</param>
    /// <param name="isEcho">Whether the response is an echo.</param>
    /// <param name="simulated">The simulated bench's device; null where the port is a real one.</param>
    /// <exception cref="UsageException">The options do not fit together.</exception>
    public HostEcho? Read(ParseResult parsed, bool isEcho, IHostInputFeed? simulated)
    {
        if (!isEcho)
        {
            var stray = All.FirstOrDefault(option => parsed.GetResult(option) is { Implicit: false });
            return stray is not null
                ? throw new UsageException($"{stray.Name} means something only with --response echo.", "Leave it out, or say --response echo.")
                : null;
        }

        var path = parsed.GetValue(device) ?? (simulated is null ? null : Simulated);
        if (path is null || (path == Simulated) != simulated is not null)
        {
            throw new UsageException(
                path is null ? "No input device of this computer is given that tells of the press." : "The simulated bench and a real device cannot answer each other.",
                "Say --echo-device DEVICE; 'tarry host devices' lists them.");
        }

        var feed = simulated ?? new HostInputFeed(() => HostInput.OfThisMachine().Open(path, parsed.GetValue(exclusive)));
        try
        {
            return new HostEcho(feed, EchoTrigger.Of(feed.Description, parsed.GetValue(code), parsed.GetValue(level), parsed.GetValue(falling)));
        }
        catch
        {
            feed.End();
            throw;
        }
    }

    private IEnumerable<Option> All => [device, code, level, falling, exclusive];
}
