using System.Globalization;
using Tarry.Studies.Reports;

namespace Tarry.Imports.HidReports;

/// <summary>The names of usages that input devices have (HID Usage Tables; numbers as in the Linux kernel's <c>include/linux/hid.h</c>).</summary>
internal static class HidUsageNames
{
    private static readonly Dictionary<int, string> GenericDesktop = new()
    {
        [0x01] = "pointer", [0x02] = "mouse", [0x04] = "joystick", [0x05] = "gamepad", [0x06] = "keyboard", [0x07] = "keypad", [0x08] = "multi_axis_controller",
        [0x30] = "x", [0x31] = "y", [0x32] = "z", [0x33] = "rx", [0x34] = "ry", [0x35] = "rz", [0x36] = "slider", [0x37] = "dial", [0x38] = "wheel",
        [0x39] = "hat_switch", [0x3D] = "start", [0x3E] = "select", [0x40] = "vx", [0x41] = "vy", [0x42] = "vz",
        [0x80] = "system_control", [0x81] = "system_power_down", [0x82] = "system_sleep", [0x83] = "system_wake_up",
        [0x90] = "dpad_up", [0x91] = "dpad_down", [0x92] = "dpad_right", [0x93] = "dpad_left",
    };

    private static readonly string[] Modifiers = ["left_control", "left_shift", "left_alt", "left_gui", "right_control", "right_shift", "right_alt", "right_gui"];

    /// <summary>A name of lower-case letters, digits and underscores, fit for a column.</summary>
    public static string Of(UsageRange usage) => usage.Page switch
    {
        0x01 when GenericDesktop.TryGetValue(usage.First, out var name) => name,
        0x07 when usage.First is >= 0xE0 and <= 0xE7 => Modifiers[usage.First - 0xE0],
        0x07 => string.Create(CultureInfo.InvariantCulture, $"key_{usage.First:x2}"),
        0x08 => string.Create(CultureInfo.InvariantCulture, $"led_{usage.First}"),
        0x09 => string.Create(CultureInfo.InvariantCulture, $"button_{usage.First}"),
        0x0C => string.Create(CultureInfo.InvariantCulture, $"consumer_{usage.First:x3}"),
        _ => string.Create(CultureInfo.InvariantCulture, $"usage_{usage.Page:x4}_{usage.First:x4}"),
    };

    /// <summary>The name of a page, for an array, whose values are its usages.</summary>
    public static string OfPage(int page) => page switch
    {
        0x01 => "desktop",
        0x07 => "key",
        0x08 => "led",
        0x09 => "button",
        0x0C => "consumer",
        _ => string.Create(CultureInfo.InvariantCulture, $"page_{page:x4}"),
    };

    public static string CollectionType(int type) => type switch
    {
        0 => "physical",
        1 => "application",
        2 => "logical",
        3 => "report",
        4 => "named array",
        5 => "usage switch",
        6 => "usage modifier",
        _ => string.Create(CultureInfo.InvariantCulture, $"type {type}"),
    };
}
