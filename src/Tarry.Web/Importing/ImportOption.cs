using System.Text.RegularExpressions;
using Tarry.Imports;
using Tarry.Studies.Sticks;
using static Tarry.Web.Importing.ImportOptionKind;

namespace Tarry.Web.Importing;

/// <summary>An option of an import as a form asks for it.</summary>
/// <param name="Name">Its name on the command line, by which errors speak of it.</param>
/// <param name="Label">What the form calls it.</param>
/// <param name="Kind">What it is chosen from.</param>
/// <param name="Hint">What helps to choose.</param>
/// <param name="Choices">Its own values with their texts; the first is taken where none is chosen.</param>
public sealed partial record ImportOption(string Name, string Label, ImportOptionKind Kind, string? Hint = null, IReadOnlyList<(string Value, string Text)>? Choices = null)
{
    private static readonly (string, string)[] Edges = [("rising", "rising"), ("falling", "falling (active low)"), ("any", "any")];
    private static readonly (string, string)[] Brightness = [("rising", "brighter"), ("falling", "darker"), ("any", "either")];
    private static readonly (string, string)[] Units = [("", "as the column\u2019s name ends"), ("us", "\u00b5s"), ("ms", "ms"), ("s", "s"), ("ns", "ns")];

    private static readonly ImportOption[] All =
    [
        new("--condition", "Condition", Condition, "What is tested. A new name declares it."),
        new("--sitting", "Sitting", Sitting, "The set-up of the bench, such as 2026-11-03-evening."),
        new("--condition-column", "Column of the condition", Column),
        new("--sitting-column", "Column of the sitting", Column),
        new("--latency-column", "Column of the latency", Column),
        new("--latency-unit", "Unit of the latency", Choice, Choices: Units),
        new("--outcome-column", "Column of the outcome", Column),
        new("--seq-column", "Column of the trial\u2019s number", Column),
        new("--press-time-column", "Column of the press time", Column),
        new("--press-time-unit", "Unit of the press time", Choice, Choices: Units),
        new("--factor", "Columns of further factors", Columns, "Between commas."),
        new("--delimiter", "Between cells", Choice, Choices: [("", "as the header has it"), (",", "comma"), (";", "semicolon"), ("\t", "tab"), ("|", "bar")]),
        new("--decimal-comma", "Numbers are written", Choice, Choices: [("", "1.5"), ("yes", "1,5")]),
        new("--header", "Names of the columns", Text, "Between commas, where the file has no header."),
        new("--press-channel", "Channel of the contact", Channel),
        new("--response-channel", "Channel of the response", Channel),
        new("--press-edge", "A press is", Choice, Choices: Edges),
        new("--response-edge", "A response is", Choice, Choices: Edges),
        new("--press-threshold", "Press is high from", Number, "A value on a channel of numbers, or a brightness."),
        new("--response-threshold", "Response is high from", Number, "A value on a channel of numbers, or a brightness."),
        new("--debounce-ms", "Bounces last at most, ms", Number),
        new("--min-latency-ms", "Shortest latency, ms", Number, "Sooner is early. 0 if empty."),
        new("--max-latency-ms", "Longest latency, ms", Number, "Later is missed. 500 if empty."),
        new("--usb-plus-channel", "D+ of a USB cable", Channel, "With D-: the reports on the cable are taken in place of presses."),
        new("--usb-minus-channel", "D- of a USB cable", Channel),
        new("--response-signal", "The response is", Choice, Choices: [("light", "a light sensor"), ("click", "a click")]),
        new("--ac-corner-hz", "Corner of the input\u2019s capacitor, Hz", Number, "As calibrated; empty for none."),
        new("--capture-fps", "Camera\u2019s rate, frames/s", Number, "As captured, not as slow motion plays it."),
        new("--press-column", "Column of the press", Column),
        new("--response-column", "Column of the response", Column),
        new("--time-column", "Column of the time stamps", Column),
        new("--device", "Device", Device, "Whose reports are taken."),
        new("--usb-speed", "Speed of the USB device", Choice, "Where the file does not say it.", [("", "as the file says"), ("low", "low"), ("full", "full"), ("high", "high")]),
        new("--report-descriptor", "Report descriptor", OtherFile, "Another file brought in, where the capture does not hold it."),
        new("--marker", "Device that marks presses", Device, "Gives latencies in place of reports."),
        new("--button", "Field that answers", DeviceField, "Any change of the reports if empty."),
        new("--presses", "Presses of the rig", Session, "On the rig\u2019s own clock: says how latencies differ. How long they are takes the offset."),
        new("--clock-offset-ms", "Offset of the rig\u2019s clock, ms", Number, "Since the first packet, where it was measured."),
        new("--clock-rate-ppm", "Rate of the capture\u2019s clock, ppm", Number, "How much faster it runs than the rig\u2019s; with the offset."),
        new("--kind", "It holds", Choice, Choices: [("", "presses, responses or reports"), ("stick", "positions of a stick")]),
        new("--procedure", "What was done with the stick", Choice, Choices: [("", ""), .. StickProcedures.Names.Select(name => (name, name.Replace('-', ' ')))]),
        new("--x-range", "Range of x", Text, "Least and greatest count, as 0..255; a table needs it."),
        new("--y-range", "Range of y", Text, "That of x if empty."),
        new("--y-direction", "y grows", Choice, Choices: [("", "up in a table, down in reports"), ("up", "up"), ("down", "down")]),
        new("--x-column", "Column of x", Column),
        new("--y-column", "Column of y", Column),
        new("--time-unit", "Unit of the times", Choice, Choices: Units),
        new("--stimulus-column", "Column of the angle of the stop", Column, "In degrees."),
        new("--x-field", "Field of x", DeviceField, "The one with the usage X if empty."),
        new("--y-field", "Field of y", DeviceField, "The one with the usage Y if empty."),
        new("--time-out-ms", "An answer counts within, ms", Number, "500 if empty."),
    ];

    /// <summary>The options that a format asks for first.</summary>
    public static IReadOnlyList<ImportOption> First(string format) => format switch
    {
        ImportFormat.LongForm => [.. Named("--latency-column", "--latency-unit"), .. Named("--condition", "--sitting").Select(name => name with { Hint = "Only where the file has no column for it." })],
        ImportFormat.Logic => Named("--condition", "--sitting", "--press-channel", "--press-edge", "--response-channel", "--response-edge"),
        ImportFormat.Sound => Named("--condition", "--sitting", "--press-channel", "--response-channel", "--response-signal"),
        ImportFormat.Video => Named("--condition", "--sitting", "--capture-fps", "--press-column", "--response-column"),
        _ => Named("--condition", "--sitting", "--device"),
    };

    /// <summary>The options that a format rarely needs.</summary>
    public static IReadOnlyList<ImportOption> Further(string format) => format switch
    {
        ImportFormat.LongForm => Named("--condition-column", "--sitting-column", "--outcome-column", "--seq-column", "--press-time-column", "--press-time-unit", "--factor", "--delimiter", "--decimal-comma", "--header", "--kind", "--procedure", "--x-range", "--y-range", "--y-direction", "--time-column", "--time-unit", "--x-column", "--y-column", "--stimulus-column"),
        ImportFormat.Logic => Named("--press-threshold", "--response-threshold", "--debounce-ms", "--min-latency-ms", "--max-latency-ms", "--usb-plus-channel", "--usb-minus-channel", "--usb-speed"),
        ImportFormat.Sound => Named("--response-edge", "--debounce-ms", "--min-latency-ms", "--max-latency-ms", "--ac-corner-hz"),
        ImportFormat.Video => [.. Named("--press-edge", "--response-edge").Select(edge => edge with { Choices = Brightness }), .. Named("--press-threshold", "--response-threshold", "--min-latency-ms", "--max-latency-ms", "--time-column", "--delimiter")],
        _ => Named("--usb-speed", "--report-descriptor", "--marker", "--button", "--time-out-ms", "--presses", "--clock-offset-ms", "--clock-rate-ppm", "--kind", "--procedure", "--x-range", "--y-range", "--y-direction", "--x-field", "--y-field"),
    };

    /// <summary>A message that names options, with the form's labels in their place.</summary>
    public static string InFormWords(string message) => OptionName().Replace(message, match =>
        All.FirstOrDefault(option => option.Name == match.Groups["name"].Value) is { } option ? $"\u201c{option.Label}\u201d" : match.Value);

    private static IReadOnlyList<ImportOption> Named(params string[] names) => [.. names.Select(name => All.First(option => option.Name == name))];

    // With the placeholder of a value behind it, as in '--sitting ID'.
    [GeneratedRegex("(?<name>--[a-z][a-z-]*[a-z])( (ID|NAME|NUMBER)\\b)?")]
    private static partial Regex OptionName();
}
