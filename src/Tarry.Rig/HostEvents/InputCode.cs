using System.Globalization;

namespace Tarry.Rig.HostEvents;

/// <summary>The numbers of the Linux input layer and their names, as <c>linux/input-event-codes.h</c> has them.</summary>
public static class InputCode
{
    /// <summary>Event type: marks between reports.</summary>
    public const ushort Synchronisation = 0;

    /// <summary>Event type: buttons and keys.</summary>
    public const ushort Key = 1;

    /// <summary>Event type: steps.</summary>
    public const ushort Relative = 2;

    /// <summary>Event type: positions.</summary>
    public const ushort Absolute = 3;

    /// <summary>Code that ends a report.</summary>
    public const ushort Report = 0;

    /// <summary>Code that says that reports were lost.</summary>
    public const ushort Dropped = 3;

    /// <summary>The first code of a mouse's buttons.</summary>
    public const ushort MouseLeft = 0x110;

    private static readonly (ushort Type, ushort First, string[] Names)[] Runs =
    [
        (Key, 1, ["KEY_ESC"]),
        (Key, 15, ["KEY_TAB"]),
        (Key, 16, ["KEY_Q", "KEY_W", "KEY_E", "KEY_R", "KEY_T", "KEY_Y", "KEY_U", "KEY_I", "KEY_O", "KEY_P"]),
        (Key, 28, ["KEY_ENTER", "KEY_LEFTCTRL", "KEY_A", "KEY_S", "KEY_D", "KEY_F", "KEY_G", "KEY_H", "KEY_J", "KEY_K", "KEY_L"]),
        (Key, 42, ["KEY_LEFTSHIFT"]),
        (Key, 44, ["KEY_Z", "KEY_X", "KEY_C", "KEY_V", "KEY_B", "KEY_N", "KEY_M"]),
        (Key, 56, ["KEY_LEFTALT", "KEY_SPACE"]),
        (Key, 103, ["KEY_UP", "KEY_PAGEUP", "KEY_LEFT", "KEY_RIGHT", "KEY_END", "KEY_DOWN"]),
        (Key, 0x100, ["BTN_0", "BTN_1", "BTN_2", "BTN_3", "BTN_4", "BTN_5", "BTN_6", "BTN_7", "BTN_8", "BTN_9"]),
        (Key, MouseLeft, ["BTN_LEFT", "BTN_RIGHT", "BTN_MIDDLE", "BTN_SIDE", "BTN_EXTRA", "BTN_FORWARD", "BTN_BACK", "BTN_TASK"]),
        (Key, 0x120, ["BTN_TRIGGER", "BTN_THUMB", "BTN_THUMB2", "BTN_TOP", "BTN_TOP2", "BTN_PINKIE", "BTN_BASE", "BTN_BASE2", "BTN_BASE3", "BTN_BASE4", "BTN_BASE5", "BTN_BASE6"]),
        (Key, 0x130, ["BTN_SOUTH", "BTN_EAST", "BTN_C", "BTN_NORTH", "BTN_WEST", "BTN_Z", "BTN_TL", "BTN_TR", "BTN_TL2", "BTN_TR2", "BTN_SELECT", "BTN_START", "BTN_MODE", "BTN_THUMBL", "BTN_THUMBR"]),
        (Key, 0x220, ["BTN_DPAD_UP", "BTN_DPAD_DOWN", "BTN_DPAD_LEFT", "BTN_DPAD_RIGHT"]),
        (Key, 0x2c0, [.. Enumerable.Range(1, 40).Select(number => string.Create(CultureInfo.InvariantCulture, $"BTN_TRIGGER_HAPPY{number}"))]),
        (Relative, 0, ["REL_X", "REL_Y"]),
        (Relative, 8, ["REL_WHEEL"]),
        (Absolute, 0, ["ABS_X", "ABS_Y", "ABS_Z", "ABS_RX", "ABS_RY", "ABS_RZ", "ABS_THROTTLE", "ABS_RUDDER", "ABS_WHEEL", "ABS_GAS", "ABS_BRAKE"]),
        (Absolute, 0x10, ["ABS_HAT0X", "ABS_HAT0Y", "ABS_HAT1X", "ABS_HAT1Y", "ABS_HAT2X", "ABS_HAT2Y", "ABS_HAT3X", "ABS_HAT3Y"]),
    ];

    private static readonly Dictionary<(ushort Type, ushort Code), string> Names = Runs
        .SelectMany(run => run.Names.Select((name, index) => (Key: (run.Type, (ushort)(run.First + index)), Name: name)))
        .ToDictionary(entry => entry.Key, entry => entry.Name);

    private static readonly Dictionary<string, (ushort Type, ushort Code)> Codes =
        Names.ToDictionary(entry => entry.Value, entry => entry.Key, StringComparer.OrdinalIgnoreCase);

    private static readonly Dictionary<ushort, string> Types = new() { [Key] = "KEY", [Relative] = "REL", [Absolute] = "ABS" };

    /// <summary>The names known here, with their numbers.</summary>
    public static IReadOnlyDictionary<string, (ushort Type, ushort Code)> Known => Codes;

    /// <summary>A code's name, or its type and number such as <c>KEY:30</c>.</summary>
    public static string Name(ushort type, ushort code) =>
        Names.TryGetValue((type, code), out var name) ? name
        : string.Create(CultureInfo.InvariantCulture, $"{Types.GetValueOrDefault(type, "EV")}:{code}");

    /// <summary>Reads a name or a type and number, as <see cref="Name"/> writes them.</summary>
    public static bool TryParse(string text, out (ushort Type, ushort Code) found)
    {
        ArgumentNullException.ThrowIfNull(text);
        if (Codes.TryGetValue(text, out found))
        {
            return true;
        }

        var parts = text.Split(':');
        var type = Types.FirstOrDefault(entry => parts[0].Equals(entry.Value, StringComparison.OrdinalIgnoreCase));
        if (parts.Length != 2 || type.Value is null || !ushort.TryParse(parts[1], NumberStyles.None, CultureInfo.InvariantCulture, out var code))
        {
            return false;
        }

        found = (type.Key, code);
        return true;
    }

    /// <summary>Whether a key is a letter, so that its device is one that people type on.</summary>
    public static bool IsLetter(ushort code) => code is (>= 16 and <= 25) or (>= 30 and <= 38) or (>= 44 and <= 50);
}
