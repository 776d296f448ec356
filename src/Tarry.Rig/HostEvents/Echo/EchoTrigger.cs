using System.Globalization;

namespace Tarry.Rig.HostEvents.Echo;

/// <summary>Which change of a device is the press that is to be echoed.</summary>
public sealed class EchoTrigger
{
    private const string BitPrefix = "bit:";
    private readonly ushort type;
    private readonly ushort? code;
    private readonly int level;
    private readonly bool falling;
    private readonly int bit;
    private bool isPast;

    private EchoTrigger(string name, ushort type, ushort? code, int level, bool falling, int bit)
    {
        Name = name;
        this.type = type;
        this.code = code;
        this.level = level;
        this.falling = falling;
        this.bit = bit;
    }

    /// <summary>What it is, for people.</summary>
    public string Name { get; }

    /// <summary>Presses that the system told of only after it had lost reports: when they came is not known, and they are not echoed.</summary>
    public long LostPresses { get; private set; }

    /// <summary>Reads what the user asked for, against what the device has.</summary>
    /// <param name="device">The device.</param>
    /// <param name="asked">
    /// A button such as <c>BTN_SOUTH</c>, an axis such as <c>ABS_Z</c>, <c>bit:N</c> for the Nth bit of a raw report from 0, least
    /// significant first; null for any button that is no key.
    /// </param>
    /// <param name="level">The value whose crossing is the press; of an axis only.</param>
    /// <param name="falling">The axis crosses it downwards, or the bit falls.</param>
    /// <exception cref="HostInputException">The device has no such thing, or the choice is not clear.</exception>
    public static EchoTrigger Of(HostInputDescription device, string? asked, int? level, bool falling)
    {
        ArgumentNullException.ThrowIfNull(device);
        if (asked is null)
        {
            return device.Buttons.Any(IsButton)
                ? new EchoTrigger("any button", InputCode.Key, null, 1, false, 0)
                : throw new HostInputException($"{device.Path} has no button that could be meant.", "Say which with --echo-code: a button, a key, an axis with --echo-level, or bit:N of a raw report.");
        }

        if (asked.StartsWith(BitPrefix, StringComparison.OrdinalIgnoreCase))
        {
            const int lastBit = (16_384 * 8) - 1;
            return int.TryParse(asked[BitPrefix.Length..], NumberStyles.None, CultureInfo.InvariantCulture, out var bit) && bit <= lastBit
                ? new EchoTrigger(falling ? $"{asked} falling" : asked, 0, null, 0, falling, bit)
                : throw new HostInputException($"'{asked}' is no bit of a report.", "Write it as bit:8 for the lowest bit of the second byte.");
        }

        if (!InputCode.TryParse(asked, out var found))
        {
            throw new HostInputException($"'{asked}' is not a name of a button or axis.", "Take one that 'tarry host devices' shows, or write its number as KEY:304.");
        }

        return found.Type switch
        {
            InputCode.Key when device.Buttons.Count == 0 || device.Buttons.Contains(found.Code) => new EchoTrigger(asked, found.Type, found.Code, 1, false, 0),
            InputCode.Absolute when device.Axes.Any(axis => axis.Code == found.Code) => OfAxis(asked, found.Code, level, falling),
            _ => throw new HostInputException($"{device.Path} has no {asked}.", "Take one that 'tarry host devices' shows."),
        };
    }

    /// <summary>Takes a report.</summary>
    /// <returns>Whether the press is in it.</returns>
    public bool Sees(InputReport report)
    {
        var pressed = false;
        if (type == 0)
        {
            var index = bit / 8;
            pressed = index < report.Bytes.Length && Cross((report.Bytes[index] & (1 << (bit % 8))) != 0 != falling);
        }

        foreach (var change in report.Events)
        {
            if (change.Type == type)
            {
                pressed |= code is null ? IsButton(change.Code) && change.Value == 1
                    : change.Code == code && Cross(falling ? change.Value <= level : change.Value >= level);
            }
        }

        if (pressed && report.FollowsALoss)
        {
            LostPresses++;
        }

        return pressed && !report.FollowsALoss;
    }

    private static EchoTrigger OfAxis(string asked, ushort code, int? level, bool falling) => level is { } given
        ? new EchoTrigger(string.Create(CultureInfo.InvariantCulture, $"{asked} {(falling ? "down" : "up")} through {given}"), InputCode.Absolute, code, given, falling, 0)
        : throw new HostInputException($"{asked} is an axis, and an axis has no press of its own.", "Say with --echo-level which value's crossing is the press.");

    private static bool IsButton(ushort code) => code is >= 0x100 and < 0x160 or >= 0x220 and < 0x224 or >= 0x2c0;

    private bool Cross(bool past)
    {
        var crossed = past && !isPast;
        isPast = past;
        return crossed;
    }
}
