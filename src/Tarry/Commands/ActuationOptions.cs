using System.CommandLine;
using Tarry.Output;
using Tarry.Studies.Sessions;

namespace Tarry.Commands;

/// <summary>The options that say what a press moves.</summary>
internal sealed class ActuationOptions
{
    private const int Half = 32_768;

    private readonly Option<string> kind = new("--actuate")
    {
        Description = "What the press moves: a contact, a strobed matrix contact, an axis, or the rig's own USB gamepad (reference).",
        DefaultValueFactory = _ => Actuation.Contact,
    };

    private readonly Option<string> drive = new("--axis-drive")
    {
        Description = "What moves the axis: an analog switch, or a 12-bit converter (dac).",
        DefaultValueFactory = _ => AxisActuation.Switch,
    };

    private readonly Option<int> low = new("--axis-low") { Description = "The axis at rest, 0..65535 of its span.", DefaultValueFactory = _ => 0 };
    private readonly Option<int> high = new("--axis-high") { Description = "The axis pressed, 0..65535 of its span.", DefaultValueFactory = _ => 65_535 };
    private readonly Option<int> threshold = new("--axis-threshold") { Description = "The level whose crossing is the input: latencies count from it.", DefaultValueFactory = _ => Half };
    private readonly Option<double> ramp = new("--axis-ramp-ms") { Description = "Time from rest to pressed, with a converter; 0 is a step.", DefaultValueFactory = _ => 0 };

    public ActuationOptions()
    {
        kind.AcceptOnlyFromAmong(Actuation.Contact, Actuation.Matrix, Actuation.AxisKind, Actuation.Reference);
        drive.AcceptOnlyFromAmong(AxisActuation.Switch, AxisActuation.Converter);
    }

    public void AddTo(Command command)
    {
        command.Add(kind);
        foreach (var option in AxisOptions)
        {
            command.Add(option);
        }
    }

    /// <summary>What was asked for; null for a contact.</summary>
    /// <exception cref="UsageException">An option of the axis without an axis.</exception>
    public Actuation? Read(ParseResult parsed)
    {
        var asked = parsed.GetValue(kind)!;
        if (asked == Actuation.AxisKind)
        {
            return new Actuation(asked, new AxisActuation(
                parsed.GetValue(drive)!,
                parsed.GetValue(low),
                parsed.GetValue(high),
                parsed.GetValue(threshold),
                (long)Math.Round(parsed.GetValue(ramp) * 1000)));
        }

        var stray = AxisOptions.FirstOrDefault(option => parsed.GetResult(option) is { Implicit: false });
        return stray is not null
            ? throw new UsageException($"{stray.Name} means something only with --actuate axis.", "Leave it out, or say --actuate axis.")
            : asked == Actuation.Contact ? null : new Actuation(asked);
    }

    private IEnumerable<Option> AxisOptions => [drive, low, high, threshold, ramp];
}
