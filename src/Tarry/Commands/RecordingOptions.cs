using System.CommandLine;
using System.CommandLine.Parsing;
using Tarry.Imports.Audio;
using Tarry.Imports.DelimitedText;
using Tarry.Imports.Recordings;
using Tarry.Imports.UsbWire;
using Tarry.Imports.ValueChangeDump;
using Tarry.Imports.Video;
using Tarry.Output;
using Tarry.Statistics.Edges;

namespace Tarry.Commands;

/// <summary>The options that say what the channels of a recording are and how presses and responses are paired.</summary>
internal sealed class RecordingOptions
{
    private readonly Option<string?> pressChannel = new("--press-channel") { Description = "The contact's channel; a name, or the number of a sound channel." };
    private readonly Option<string?> responseChannel = new("--response-channel") { Description = "The response's channel." };
    private readonly Option<SignalEdge> pressEdge = Edge("--press-edge", "The edge that is a press: rising, falling (active low) or any.");
    private readonly Option<SignalEdge> responseEdge = Edge("--response-edge", "The edge that is a response: rising, falling or any.");
    private readonly Option<double?> pressThreshold = new Option<double?>("--press-threshold") { Description = "From which value or brightness on the press channel is high." }.TakesNumber();
    private readonly Option<double?> responseThreshold = new Option<double?>("--response-threshold") { Description = "From which value or brightness on the response channel is high." }.TakesNumber();
    private readonly Option<double?> shortest = new Option<double?>("--min-latency-ms") { Description = "The shortest possible latency; 0 if not given. What is sooner is early." }.TakesNumber();
    private readonly Option<double?> longest = new Option<double?>("--max-latency-ms") { Description = "The longest latency to wait for; 500 if not given. Shorter than the time between presses." }.TakesNumber(positive: true);
    private readonly Option<double?> debounce = new Option<double?>("--debounce-ms") { Description = "How long a bouncing contact is taken for one press; 5 for logic, 60 for sound if not given." }.TakesNumber();
    private readonly Option<string> responseSignal = new("--response-signal") { Description = "What the response channel holds, light or click.", DefaultValueFactory = _ => "light" };
    private readonly Option<double?> couplingCorner = new Option<double?>("--ac-corner-hz") { Description = "The calibrated corner of a coupling capacitor in the response's input." }.TakesNumber(positive: true);
    private readonly Option<string?> pictures = new("--pictures") { Description = "A folder for a picture of each doubtful pairing." };
    private readonly Option<double?> captureFps = new Option<double?>("--capture-fps") { Description = "Frames a second that the camera captured, not those that a slow-motion file plays." }.TakesNumber(positive: true);
    private readonly Option<string> pressColumn = new("--press-column") { Description = "The column of the press.", DefaultValueFactory = _ => "press" };
    private readonly Option<string> responseColumn = new("--response-column") { Description = "The column of the response.", DefaultValueFactory = _ => "response" };
    private readonly Option<string> timeColumn = new("--time-column") { Description = "The column of the frames' time stamps; of a stick, time_us and the like.", DefaultValueFactory = _ => "pts_time" };
    private readonly Option<string?> usbPlus = new("--usb-plus-channel") { Description = "The channel of D+ of a USB cable; its reports are then taken, as from a packet capture." };
    private readonly Option<string?> usbMinus = new("--usb-minus-channel") { Description = "The channel of D- of a USB cable." };

    public RecordingOptions()
    {
        responseSignal.AcceptOnlyFromAmong("light", "click");
    }

    /// <summary>The options, for the command and its help.</summary>
    public IReadOnlyList<OptionGroup> Groups =>
    [
        new("Recordings of one session: logic analyser, sound, video", [pressChannel, responseChannel, pressEdge, responseEdge, pressThreshold, responseThreshold, shortest, longest, debounce]),
        new("Sound (WAV)", [responseSignal, couplingCorner, pictures]),
        new("Video (a table of brightness)", [captureFps, pressColumn, responseColumn, timeColumn]),
        new("A USB cable on a logic analyser", [usbPlus, usbMinus]),
    ];

    /// <summary>The data lines of a USB cable, where they are named.</summary>
    public UsbCable? Cable(ParseResult parsed, string? speed) => (parsed.GetValue(usbPlus), parsed.GetValue(usbMinus)) switch
    {
        (null, null) => null,
        ({ }, { }) when speed == "high" => throw new UsageException("A logic analyser does not follow a cable at high speed.", "Give --usb-speed low or full, or import a packet capture."),
        ({ } plus, { } minus) => new UsbCable(plus, minus, speed == "full" ? UsbCableSpeed.Full : UsbCableSpeed.Low),
        _ => throw new UsageException("A USB cable has two data lines, and one is named.", "Give both --usb-plus-channel and --usb-minus-channel."),
    };

    public ValueChangeDumpOptions Logic(ParseResult parsed) => new()
    {
        PressChannel = parsed.GetValue(pressChannel),
        ResponseChannel = parsed.GetValue(responseChannel),
        PressEdge = parsed.GetValue(pressEdge),
        ResponseEdge = parsed.GetValue(responseEdge),
        PressThreshold = parsed.GetValue(pressThreshold),
        ResponseThreshold = parsed.GetValue(responseThreshold),
        DebounceMs = parsed.GetValue(debounce) ?? 5,
        Window = Window(parsed),
    };

    public TwoChannelOptions Sound(ParseResult parsed) => new()
    {
        PressChannel = Number(parsed, pressChannel) ?? 1,
        ResponseChannel = Number(parsed, responseChannel) ?? 2,
        Response = parsed.GetValue(responseSignal) == "click" ? SignalKind.Click : SignalKind.Light,
        ResponseEdge = parsed.GetValue(responseEdge),
        DebounceMs = parsed.GetValue(debounce) ?? 60,
        CouplingCornerHz = parsed.GetValue(couplingCorner),
        Window = Window(parsed),
        Pictures = parsed.GetValue(pictures),
    };

    public VideoOptions? Video(ParseResult parsed, DelimitedTextOptions text) => parsed.GetValue(captureFps) is not { } fps ? null : new()
    {
        CaptureFps = fps,
        PressColumn = parsed.GetValue(pressColumn)!,
        ResponseColumn = parsed.GetValue(responseColumn)!,
        TimeColumn = parsed.GetValue(timeColumn)!,
        PressEdge = parsed.GetValue(pressEdge),
        ResponseEdge = parsed.GetValue(responseEdge),
        PressThreshold = parsed.GetValue(pressThreshold),
        ResponseThreshold = parsed.GetValue(responseThreshold),
        Delimiter = text.Delimiter,
        DecimalComma = text.DecimalComma,
        Window = Window(parsed),
    };

    /// <summary>The column of the times, where it is named.</summary>
    public string? TimeColumn(ParseResult parsed) => parsed.GetResult(timeColumn) is { Implicit: false } ? parsed.GetValue(timeColumn) : null;

    /// <summary>Whether the command line says that a table is one of a video.</summary>
    public bool SaysVideo(ParseResult parsed) => parsed.GetValue(captureFps) is not null;

    private PairingWindow Window(ParseResult parsed) =>
        new(parsed.GetValue(shortest) ?? PairingWindow.Default.ShortestMs, parsed.GetValue(longest) ?? PairingWindow.Default.LongestMs);

    private static int? Number(ParseResult parsed, Option<string?> option) => parsed.GetValue(option) switch
    {
        null => null,
        "left" => 1,
        "right" => 2,
        var text => int.TryParse(text, out var number) ? number
            : throw new UsageException($"'{text}' is no channel of a sound recording.", $"Give {option.Name} with a number from 1, or left or right."),
    };

    private static Option<SignalEdge> Edge(string name, string description)
    {
        var option = new Option<SignalEdge>(name)
        {
            Description = description,
            DefaultValueFactory = _ => SignalEdge.Rising,
            CustomParser = argument =>
            {
                switch (argument.Tokens[0].Value)
                {
                    case "rising": return SignalEdge.Rising;
                    case "falling": return SignalEdge.Falling;
                    case "any": return SignalEdge.Any;
                    default:
                        argument.AddError($"'{argument.Tokens[0].Value}' is no edge for {name}; give rising, falling or any.");
                        return SignalEdge.Rising;
                }
            },
        };
        option.CompletionSources.Add("rising", "falling", "any");
        return option;
    }
}
