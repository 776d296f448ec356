using Tarry.DamagedInputs;
using Tarry.Rig.HostEvents;
using Tarry.Rig.HostEvents.Linux;
using Tarry.Rig.HostEvents.Recording;
using Tarry.Rig.HostEvents.Windows;
using Tarry.Studies.Sessions;

namespace Tarry.Rig.Tests.HostEvents;

/// <summary>Every reader of what a host tells of its input devices, live or recorded.</summary>
/// <param name="folder">A folder for the damaged files.</param>
internal sealed class HostInputReaders(string folder)
{
    private static readonly SessionKey Key = new("monday", "pad");
    private static readonly string[] RecordingWords = ["tarry-host-recording 1 ", "\n", " ", "e ", "-1", "9223372036854775807", "\"codes\":[\"1:304\"]", "{", "}", "null", "\"host-reports\"", "00", "0g", "\"report_descriptor\":\"05\"", "\u00ff", "\0"];

    /// <summary>All of them.</summary>
    public IReadOnlyList<DamagedReader> All() =>
    [
        new("evdev", [Hex(Axis + Button + End + Axis + End), Hex(Axis + Dropped + Button + End + Button + End)], [], input => Evdev(input, 24)) { MostAllocated = 100_000 },
        new("evdev-32", [Hex("00f15365 28230000 0100 3001 01000000 00f15365 28230000 0000 0000 00000000")], [], input => Evdev(input, 16)) { MostAllocated = 100_000 },
        new("raw-input", [Message("00000000 0000 0000 0900 0000 00000000 fbffffff 07000000 00000000"), Message("01000000 4800 0200 0000 2600 00010000 00000000"), Message("02000000 03000000 02000000 01aabb 01ccdd")], [], RawInput) { MostAllocated = 100_000 },
        new("host-recording", [Recording("host-events", ["1:304", "2:0"], "0100000000000000"), Recording("host-reports", [], "01ff7f")], RecordingWords, Recorded) { IsRefusal = thrown => thrown is HostInputException },
    ];

    private const string Stamp = "00f1536500000000 2823000000000000";
    private const string Axis = Stamp + "0300 0000 0080ffff";
    private const string Button = Stamp + "0100 3001 01000000";
    private const string End = Stamp + "0000 0000 00000000";
    private const string Dropped = Stamp + "0000 0300 00000000";

    private static void Evdev(byte[] input, int size)
    {
        var (reports, events) = (0, 0);
        var framing = new EvdevFraming(size, state => state.Add(new InputEvent(1, 0x131, 1)));
        var cut = input.Length / 3;
        framing.Push(input.AsSpan(0, cut), Take);
        framing.Push(input.AsSpan(cut), Take);
        Require(events <= input.Length / size && reports <= input.Length / size, $"{reports} reports with {events} events came of {input.Length} bytes");

        void Take(InputReport report)
        {
            reports++;
            events += report.FollowsALoss ? 0 : report.Events.Length;
        }
    }

    private static void RawInput(byte[] input)
    {
        foreach (var pointerSize in new[] { 4, 8 })
        {
            var bytes = 0;
            _ = RawInputMessage.Device(input, pointerSize);
            var understood = RawInputMessage.Read(input, pointerSize, 42, report => bytes += report.Bytes.Length + report.Events.Length);
            Require(understood ? bytes <= input.Length : bytes == 0, $"{bytes} bytes and events came of {input.Length} bytes");
        }
    }

    private void Recorded(byte[] input)
    {
        var path = Path.Combine(folder, "host-recording");
        File.WriteAllBytes(path, input);
        var (session, import) = RecordedSession.Read(path, Key, _ => ([], false));
        var cutOff = import.Refused.Any(item => item.Reason.StartsWith("cut off", StringComparison.Ordinal)) ? 1 : 0;
        Require(session.Reports.Count >= 1 && session.Reports.Count <= input.Length, $"{session.Reports.Count} reports came of {input.Length} bytes");
        Require(import.RowsRead + cutOff == import.RowsKept + import.RefusedTotal, "lines kept and refused are not the lines read");
        foreach (var field in session.Stream.Fields)
        {
            _ = field.ValueIn(session.Reports.Data(0));
        }
    }

    private static byte[] Recording(string transport, string[] codes, string report)
    {
        var header = new RecordingHeader { Device = "Pad", Transport = transport, Clock = "a clock", Codes = codes, ReportDescriptor = codes.Length > 0 ? null : "050109" };
        return System.Text.Encoding.UTF8.GetBytes($"{header.ToLine()}\n1000 {report}\n5000 {report}\ne something happened\n9000 {report}\n");
    }

    // Kind, then what follows the size, the device and wParam.
    private static byte[] Message(string hex)
    {
        var bytes = Hex(hex);
        return [.. bytes[..4], .. new byte[20], .. bytes[4..]];
    }

    private static byte[] Hex(string hex) => Convert.FromHexString(hex.Replace(" ", "", StringComparison.Ordinal));

    private static void Require(bool holds, string otherwise)
    {
        if (!holds)
        {
            throw new InvalidDataException(otherwise);
        }
    }
}
