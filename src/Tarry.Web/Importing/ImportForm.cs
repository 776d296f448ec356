using System.Globalization;
using Tarry.Imports;
using Tarry.Imports.Audio;
using Tarry.Imports.DelimitedText;
using Tarry.Imports.PacketCapture;
using Tarry.Imports.PacketCapture.Usb;
using Tarry.Imports.Recordings;
using Tarry.Imports.Sticks;
using Tarry.Imports.UsbWire;
using Tarry.Imports.ValueChangeDump;
using Tarry.Imports.Video;
using Tarry.Statistics.Edges;
using Tarry.Studies.Sticks;

namespace Tarry.Web.Importing;

/// <summary>What is entered for an import: values of options by their names.</summary>
public sealed class ImportForm
{
    private readonly Dictionary<string, string> values = new(StringComparer.Ordinal);
    private readonly Dictionary<string, string> problems = new(StringComparer.Ordinal);

    /// <summary>What is wrong, by the name of the option, after <see cref="ToRequest"/>.</summary>
    public IReadOnlyDictionary<string, string> Problems => problems;

    /// <summary>The value of an option; null for none.</summary>
    public string? this[string name]
    {
        get => values.GetValueOrDefault(name);
        set
        {
            // A tab is a value, and no blank.
            if (string.IsNullOrWhiteSpace(value) && value != "\t")
            {
                values.Remove(name);
            }
            else
            {
                values[name] = value == "\t" ? value : value.Trim();
            }
        }
    }

    /// <summary>The import that it asks for, or null where a value cannot be one: see <see cref="Problems"/>.</summary>
    /// <param name="files">The files.</param>
    /// <param name="format">Their format.</param>
    public ImportRequest? ToRequest(IReadOnlyList<string> files, string format)
    {
        problems.Clear();
        var request = new ImportRequest
        {
            Files = files,
            Format = format,
            Text = Text(),
            Logic = Logic(),
            Cable = Cable(),
            Sound = Sound(),
            Video = Video(),
            Capture = Capture(),
            Presses = this["--presses"],
            Stick = this["--kind"] is null ? null : Stick(),
        };
        return problems.Count == 0 ? request : null;
    }

    private DelimitedTextOptions Text() => new()
    {
        Condition = this["--condition"],
        Sitting = this["--sitting"],
        ConditionColumn = this["--condition-column"],
        SittingColumn = this["--sitting-column"],
        SequenceColumn = this["--seq-column"],
        PressTimeColumn = this["--press-time-column"],
        LatencyColumn = this["--latency-column"],
        OutcomeColumn = this["--outcome-column"],
        PressTimeUnit = Unit("--press-time-unit"),
        LatencyUnit = Unit("--latency-unit"),
        FactorColumns = List("--factor") ?? [],
        Delimiter = this["--delimiter"]?[0],
        DecimalComma = this["--decimal-comma"] is not null,
        Header = List("--header"),
    };

    private ValueChangeDumpOptions Logic()
    {
        var usual = new ValueChangeDumpOptions();
        return usual with
        {
            PressChannel = this["--press-channel"],
            ResponseChannel = this["--response-channel"],
            PressEdge = Edge("--press-edge"),
            ResponseEdge = Edge("--response-edge"),
            PressThreshold = Number("--press-threshold"),
            ResponseThreshold = Number("--response-threshold"),
            DebounceMs = Number("--debounce-ms", 0) ?? usual.DebounceMs,
            Window = Window(),
        };
    }

    private UsbCable? Cable()
    {
        var (plus, minus) = (this["--usb-plus-channel"], this["--usb-minus-channel"]);
        if (plus is null && minus is null)
        {
            return null;
        }

        if (plus is null || minus is null)
        {
            problems[plus is null ? "--usb-plus-channel" : "--usb-minus-channel"] = "A USB cable has two data lines; name this one as well, or neither.";
            return null;
        }

        if (this["--usb-speed"] == "high")
        {
            problems["--usb-speed"] = "A logic analyser does not follow a cable at high speed; choose low or full, or import a packet capture.";
        }

        return new UsbCable(plus, minus, this["--usb-speed"] == "full" ? UsbCableSpeed.Full : UsbCableSpeed.Low);
    }

    private TwoChannelOptions Sound()
    {
        var usual = new TwoChannelOptions();
        return usual with
        {
            PressChannel = Channel("--press-channel") ?? usual.PressChannel,
            ResponseChannel = Channel("--response-channel") ?? usual.ResponseChannel,
            Response = this["--response-signal"] == "click" ? SignalKind.Click : SignalKind.Light,
            ResponseEdge = Edge("--response-edge"),
            DebounceMs = Number("--debounce-ms", 0) ?? usual.DebounceMs,
            CouplingCornerHz = Number("--ac-corner-hz", 0),
            Window = Window(),
        };
    }

    private VideoOptions? Video()
    {
        if (Number("--capture-fps", 0) is not { } fps)
        {
            return null;
        }

        var usual = new VideoOptions { CaptureFps = fps };
        return usual with
        {
            PressColumn = this["--press-column"] ?? usual.PressColumn,
            ResponseColumn = this["--response-column"] ?? usual.ResponseColumn,
            TimeColumn = this["--time-column"] ?? usual.TimeColumn,
            PressEdge = Edge("--press-edge"),
            ResponseEdge = Edge("--response-edge"),
            PressThreshold = Number("--press-threshold"),
            ResponseThreshold = Number("--response-threshold"),
            Delimiter = this["--delimiter"]?[0],
            DecimalComma = this["--decimal-comma"] is not null,
            Window = Window(),
        };
    }

    private PacketCaptureOptions Capture()
    {
        var usual = new PacketCaptureOptions();
        return usual with
        {
            Condition = this["--condition"],
            Sitting = this["--sitting"],
            Device = this["--device"],
            Speed = this["--usb-speed"] switch { "low" or "full" => UsbSpeed.LowOrFull, "high" => UsbSpeed.High, _ => UsbSpeed.Unknown },
            ReportDescriptorFile = this["--report-descriptor"],
            Marker = this["--marker"],
            Button = this["--button"],
            TimeOutMs = Number("--time-out-ms", 0) ?? usual.TimeOutMs,
            ClockOffsetMs = Number("--clock-offset-ms"),
            ClockRatePpm = Number("--clock-rate-ppm") ?? usual.ClockRatePpm,
        };
    }

    private StickReading? Stick()
    {
        if (this["--procedure"] is not { } name || StickProcedures.Find(name) is not { } procedure)
        {
            problems["--procedure"] = "Choose what was done with the stick.";
            return null;
        }

        var (x, y) = (Range("--x-range"), Range("--y-range"));
        var table = x is not { } range ? null : new StickTableOptions
        {
            X = range,
            Y = y ?? range,
            Vertical = this["--y-direction"] == "down" ? VerticalDirection.Down : VerticalDirection.Up,
            TimeColumn = this["--time-column"],
            TimeUnit = Unit("--time-unit"),
            XColumn = this["--x-column"],
            YColumn = this["--y-column"],
            AngleColumn = this["--stimulus-column"],
            Text = Text(),
        };
        return new StickReading(procedure, table, new StickReportOptions
        {
            X = x,
            Y = y ?? x,
            XField = this["--x-field"],
            YField = this["--y-field"],
            Vertical = this["--y-direction"] == "up" ? VerticalDirection.Up : VerticalDirection.Down,
        });
    }

    private StickRange? Range(string name)
    {
        if (this[name] is not { } text)
        {
            return null;
        }

        var ends = text.Split("..");
        if (ends.Length == 2 && ReadsAsNumber(ends[0], out var low) && ReadsAsNumber(ends[1], out var high) && low < high)
        {
            return new StickRange(low, high, null);
        }

        problems[name] = "Give the least and the greatest count, as 0..255.";
        return null;
    }

    private static bool ReadsAsNumber(string text, out double number) =>
        double.TryParse(text, NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out number) && double.IsFinite(number);

    private PairingWindow Window() => new(Number("--min-latency-ms") ?? PairingWindow.Default.ShortestMs, Number("--max-latency-ms", 0) ?? PairingWindow.Default.LongestMs);

    private TimeUnit? Unit(string name) => this[name] is { } symbol ? TimeUnits.FromSymbol(symbol) : null;

    private SignalEdge Edge(string name) => this[name] switch { "falling" => SignalEdge.Falling, "any" => SignalEdge.Any, _ => SignalEdge.Rising };

    private string[]? List(string name) => this[name]?.Split(',', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries);

    // The channels of a sound recording are offered by number; those of another file, kept from before, are none here.
    private int? Channel(string name) => int.TryParse(this[name], NumberStyles.None, CultureInfo.InvariantCulture, out var number) ? number : null;

    private double? Number(string name, double? above = null)
    {
        if (this[name] is not { } text)
        {
            return null;
        }

        if (double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out var number) && double.IsFinite(number) && !(number <= above))
        {
            return number;
        }

        problems[name] = above is null ? "Give a number with a decimal point, such as 0.5." : "Give a number more than 0, with a decimal point, such as 0.5.";
        return null;
    }
}
