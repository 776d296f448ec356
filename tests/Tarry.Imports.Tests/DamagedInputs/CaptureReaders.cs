using Tarry.DamagedInputs;
using Tarry.Imports.HidReports;
using Tarry.Imports.PacketCapture;
using Tarry.Imports.Tests.PacketCapture;

namespace Tarry.Imports.Tests.DamagedInputs;

/// <summary>The readers of packet captures and of report descriptors.</summary>
internal static class CaptureReaders
{
    private static readonly byte[][] Reports = [.. SampleCaptures.Reports(21, 3, 11, 1)];
    private static readonly byte[][] MouseReports = [.. SampleCaptures.Reports(22, 3, 3)];

    public static DamagedReader[] All() =>
    [
        new("pcap", Pcap(), [], ReadCapture),
        new("pcapng", PcapNg(), [], ReadCapture),
        new("btsnoop", BtSnoop(), [], ReadCapture),
        new("hid-descriptor", [SampleDescriptors.Gamepad, SampleDescriptors.Keyboard, SampleDescriptors.Mouse], [], ReadDescriptor),
    ];

    private static byte[][] Pcap() =>
    [
        SampleFiles.Pcap(220, SampleCaptures.Usb(SampleDescriptors.Gamepad, Reports, maxPacket: 16)),
        SampleFiles.Pcap(220, SampleCaptures.Usb(SampleDescriptors.Gamepad, Reports, bigEndian: true), nanoseconds: true, bigEndian: true),
        SampleFiles.Pcap(189, SampleCaptures.Usb(SampleDescriptors.Mouse, MouseReports, mapped: false)),
        SampleFiles.Pcap(249, SampleCaptures.UsbPcap(SampleDescriptors.Gamepad, Reports)),
    ];

    private static byte[][] PcapNg() =>
    [
        SampleFiles.PcapNg(220, SampleCaptures.Usb(SampleDescriptors.Gamepad, Reports, maxPacket: 16)),
        SampleFiles.PcapNg(220, SampleCaptures.Usb(SampleDescriptors.Mouse, MouseReports, bigEndian: true), bigEndian: true),
        SampleFiles.PcapNg(201, SampleCaptures.LowEnergy(SampleDescriptors.Gamepad, 1, Reports).Select(packet => packet with { Data = [0, 0, 0, (byte)(packet.Flags & 1), .. packet.Data] })),
        SampleFiles.PcapNg(254, SampleCaptures.Classic(SampleDescriptors.Mouse, MouseReports, 9).Select(packet => packet with { Data = [0, 0, 0, (byte)(packet.Data[0] == 4 ? 3 : 4 + (packet.Flags & 1)), .. packet.Data.AsSpan(1)] })),
    ];

    private static byte[][] BtSnoop() =>
    [
        SampleFiles.BtSnoop(1002, SampleCaptures.LowEnergy(SampleDescriptors.Gamepad, 1, Reports)),
        SampleFiles.BtSnoop(1002, SampleCaptures.Classic(SampleDescriptors.Mouse, MouseReports, 9)),
        SampleFiles.BtSnoop(1001, SampleCaptures.Classic(SampleDescriptors.Mouse, MouseReports).Select(packet => packet with { Data = packet.Data[1..], Flags = packet.Flags | (packet.Data[0] == 4 ? 2u : 0) })),
        SampleFiles.BtSnoop(2001, SampleCaptures.LowEnergy(SampleDescriptors.Gamepad, 1, Reports).Select(packet => packet with { Data = packet.Data[1..], Flags = packet.Data[0] == 4 ? 3 : 4 + (packet.Flags & 1) })),
    ];

    private static void ReadCapture(byte[] input)
    {
        using var stream = new MemoryStream(input, writable: false);
        var capture = InputCapture.Read(stream);
        foreach (var device in capture?.Devices ?? [])
        {
            var notes = new List<string>();
            var fields = DeviceFields.Of(device, null, notes);
            if (fields.Broken() is { } broken)
            {
                throw new InvalidDataException(broken);
            }

            for (var index = 0; index < device.Log.Count; index++)
            {
                foreach (var field in fields.Fields)
                {
                    _ = field.ValueIn(device.Log.Data(index));
                }
            }
        }

        if (capture?.Defects.First.FirstOrDefault(defect => defect.Offset < 0 || defect.Offset > input.Length || defect.Message.Length == 0) is { } wrong)
        {
            throw new InvalidDataException($"A defect has the place {wrong.Offset} and the message '{wrong.Message}'.");
        }
    }

    private static void ReadDescriptor(byte[] input)
    {
        var descriptor = HidReportDescriptor.Parse(input);
        var (fields, _) = HidReportFields.Of(descriptor, 1, descriptor.UsesReportIds);
        foreach (var field in fields)
        {
            _ = field.ValueIn(input);
        }

        _ = HidDescriptorText.Lines(descriptor).Sum(line => line.Length);
        if (descriptor.Problems.FirstOrDefault(problem => problem.Offset < 0 || problem.Offset > input.Length) is { } wrong)
        {
            throw new InvalidDataException($"A problem has the place {wrong.Offset}.");
        }
    }
}
