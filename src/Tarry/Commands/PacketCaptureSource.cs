using System.CommandLine;
using Tarry.Imports;
using Tarry.Imports.HidReports;
using Tarry.Imports.PacketCapture;
using Tarry.Imports.PacketCapture.Usb;
using Tarry.Imports.UsbWire;
using Tarry.Output;

namespace Tarry.Commands;

/// <summary>Packet captures as a source of <c>tarry import</c>: their options, and what is made of them.</summary>
internal sealed class PacketCaptureSource
{
    private readonly Option<string?> device = new("--device") { Description = "The device whose reports are taken, such as usb1.5; --explain lists them." };
    private readonly Option<string?> speed = new("--usb-speed") { Description = "The speed of the USB device, low, full or high, where a packet capture does not say it; of a cable in a logic recording low or full, low if not given." };
    private readonly Option<string?> descriptor = new("--report-descriptor") { Description = "A file with the device's HID report descriptor, where the capture does not hold it." };
    private readonly Option<string?> marker = new("--marker") { Description = "The device, or DEVICE:FIELD, whose report marks a press; gives latencies in place of reports." };
    private readonly Option<string?> button = new("--button") { Description = "The field that answers a marked press; any change where not given." };
    private readonly Option<string?> presses = new("--presses") { Description = "Presses of a rig on its own clock; a session of the study, as SITTING.CONDITION, or a long-form CSV. Says how latencies differ; how long they are takes --clock-offset-ms." };
    private readonly Option<double?> clockOffset = new Option<double?>("--clock-offset-ms") { Description = "Time since the first packet at which the clock of --presses was at 0, where it was measured; gives latencies in place of reports." }.TakesNumber();
    private readonly Option<double> clockRate = new Option<double>("--clock-rate-ppm") { Description = "How much faster the capture's clock runs than that of --presses, with --clock-offset-ms; 0 if not given." }.TakesNumber();
    private readonly Option<double> timeOut = new Option<double>("--time-out-ms") { Description = "How long after a marked press an answer counts.", DefaultValueFactory = _ => 500 }.TakesNumber(positive: true);

    public PacketCaptureSource()
    {
        speed.AcceptOnlyFromAmong("low", "full", "high");
    }

    /// <summary>The options, for the command and its help.</summary>
    public IReadOnlyList<OptionGroup> Groups =>
    [
        new("Packet captures (pcap, pcapng, btsnoop)", [device, speed, descriptor]),
        new("Packet captures in which presses are known", [marker, presses, button, timeOut, clockOffset, clockRate]),
    ];

    /// <summary>The speed that was given, as it was written.</summary>
    public string? SpeedName(ParseResult parsed) => parsed.GetValue(speed);

    /// <summary>Reads a packet capture, or what was on a cable.</summary>
    public CaptureFile Read(ParseResult parsed, string file, UsbCable? cable, IProgress<ImportProgress> progress, CancellationToken cancellation) => cable is null
        ? CaptureFile.Read(file, Speed(parsed), progress, cancellation)
        : UsbCableRecording.Read(file, cable, progress, cancellation);

    /// <summary>Says what is in a capture.</summary>
    public void Explain(ParseResult parsed, CaptureFile file, Terminal terminal)
    {
        var given = parsed.GetValue(descriptor) is { } path ? HidDescriptorFile.Read(Whole(path)) : null;
        foreach (var line in CaptureDescription.Lines(file, given))
        {
            terminal.Out.WriteLine(line);
        }
    }

    /// <summary>Says what is in a file with a HID report descriptor.</summary>
    public static void ExplainDescriptor(string file, Terminal terminal)
    {
        foreach (var line in HidDescriptorText.Lines(HidReportDescriptor.Parse(HidDescriptorFile.Read(Whole(file)))))
        {
            terminal.Out.WriteLine(line);
        }
    }

    private static byte[] Whole(string file)
    {
        const int LongestText = 1 << 20;
        var info = new FileInfo(file);
        return !info.Exists ? throw new ImportException("There is no such file.", file, "Check the path.")
            : info.Length > LongestText ? throw new ImportException("This is no packet capture, and too long for a report descriptor.", file, "Give a pcap, pcapng or btsnoop file, or a report descriptor as bytes or hex digits.")
            : File.ReadAllBytes(file);
    }

    /// <summary>What is taken from a capture.</summary>
    public PacketCaptureOptions Options(ParseResult parsed, DelimitedTextColumns names) => new()
    {
        Condition = names.Condition(parsed),
        Sitting = names.Sitting(parsed),
        Device = parsed.GetValue(device),
        Speed = Speed(parsed),
        ReportDescriptorFile = parsed.GetValue(descriptor),
        Marker = parsed.GetValue(marker),
        Button = parsed.GetValue(button),
        TimeOutMs = parsed.GetValue(timeOut),
        ClockOffsetMs = parsed.GetValue(clockOffset),
        ClockRatePpm = parsed.GetValue(clockRate),
    };

    /// <summary>The presses on another clock, as they are named; null for none.</summary>
    public string? Presses(ParseResult parsed)
    {
        var name = parsed.GetValue(presses);
        return name is null && (parsed.GetValue(clockOffset) is not null || parsed.GetResult(clockRate) is { Implicit: false })
            ? throw new UsageException("A relation of clocks is stated, and no presses on the other clock are named.", "Give --presses SITTING.CONDITION or a CSV.")
            : name;
    }

    private UsbSpeed Speed(ParseResult parsed) => parsed.GetValue(speed) switch
    {
        "low" or "full" => UsbSpeed.LowOrFull,
        "high" => UsbSpeed.High,
        _ => UsbSpeed.Unknown,
    };
}
