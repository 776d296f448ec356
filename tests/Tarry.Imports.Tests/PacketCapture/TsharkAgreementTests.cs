using System.Globalization;
using Tarry.Imports.PacketCapture;
using Tarry.Imports.PacketCapture.Files;
using Tarry.Imports.PacketCapture.Usb;
using Tarry.Studies.Reports;

namespace Tarry.Imports.Tests.PacketCapture;

/// <summary>Every report, time and field against tshark's own decoding of the same file (4.0.17 where written).</summary>
public class TsharkAgreementTests
{
    private const string PadFields = "x,y,rx,ry";

    [Theory]
    [InlineData("pcapng", true, false)]
    [InlineData("pcapng", true, true)]
    [InlineData("pcap", false, false)]
    [InlineData("pcap", true, true)]
    [InlineData("nsecpcap", false, true)]
    public void Usb_Gamepad_EveryReportTimeAndField(string format, bool mapped, bool bigEndian)
    {
        using var folder = new TemporaryFolder();
        var packets = SampleCaptures.Usb(SampleDescriptors.Gamepad, SampleCaptures.Reports(7, 300, 11, 1), maxPacket: 16, slot: 8_000_125, mapped: mapped, bigEndian: bigEndian);
        var path = folder.Write("pad", Write(format, mapped ? 220 : 189, packets, bigEndian));

        var device = Assert.Single(Read(path).Devices);

        var stream = DeviceFields.Of(device, null, new List<string>());
        var rows = Tshark.Fields(
            path, "usbhid.data", "frame.time_epoch", "usbhid.data", "usbhid.data.report_id", "usbhid.data.axis.x", "usbhid.data.axis.y", "usbhid.data.axis.rx", "usbhid.data.axis.ry", "usbhid.data.button");
        Assert.Equal(300, rows.Count);
        Assert.Equal(rows.Count, device.Reports);
        for (var index = 0; index < rows.Count; index++)
        {
            var data = device.Log.Data(index);
            Assert.Equal(Tshark.Nanoseconds(rows[index][0]), device.Log.Tick(index));
            Assert.Equal(rows[index][1], Convert.ToHexStringLower(data));
            Assert.Equal(1, stream.Endpoints[0].ReportIdOf(data));
            Assert.Equal(string.Join(',', rows[index][3..7]), Values(stream, data, PadFields.Split(',')));
            Assert.Equal(rows[index][7], Values(stream, data, [.. Enumerable.Range(1, 12).Select(number => $"button_{number}")]));
        }
    }

    [Fact]
    public void Usb_KeyboardAndMouseOnOneBusAndUsbPcap_EveryReportTimeAndField()
    {
        using var folder = new TemporaryFolder();
        var keyboard = folder.Write("keyboard", Write("pcapng", 220, SampleCaptures.Usb(SampleDescriptors.Keyboard, SampleCaptures.Reports(8, 100, 8), device: 9), false));
        var mouse = folder.Write("mouse", Write("pcapng", 220, SampleCaptures.Usb(SampleDescriptors.Mouse, SampleCaptures.Reports(9, 100, 3), device: 4, start: SampleCaptures.Start + 3_000_000), false));
        var pad = folder.Write("pad", Write("nsecpcap", 249, SampleCaptures.UsbPcap(SampleDescriptors.Gamepad, SampleCaptures.Reports(10, 100, 11, 1)), false));
        var merged = folder["merged.pcapng"];
        Tshark.Run("mergecap", "-F", "pcapng", "-w", merged, keyboard, mouse, pad);

        var capture = Read(merged);

        Assert.Equal(["usb1.7", "usb3.4", "usb3.9"], capture.Devices.Select(device => device.Id));
        Compare("usb1.7", "usb.addr==\"1.7.1\"", "usbhid.data.axis.x", "x");
        Compare("usb3.4", "usb.device_address==4 && usb.bus_id==3", "usbhid.data.axis.y", "y");
        Compare("usb3.9", "usb.device_address==9", "usbhid.data.key.variable", "left_control left_shift left_alt left_gui right_control right_shift right_alt right_gui");

        void Compare(string id, string filter, string field, string columns)
        {
            var device = capture.Devices.Single(candidate => candidate.Id == id);
            var stream = DeviceFields.Of(device, null, new List<string>());
            var rows = Tshark.Fields(merged, $"usbhid.data && {filter}", "frame.time_epoch", "usbhid.data", field);
            Assert.Equal(100, rows.Count);
            Assert.Equal(
                rows.Select(row => (Tshark.Nanoseconds(row[0]), row[1], row[2])),
                Enumerable.Range(0, device.Log.Count).Select(index => (
                    device.Log.Tick(index), Convert.ToHexStringLower(device.Log.Data(index)), Values(stream, device.Log.Data(index), columns.Split(' ')))));
        }
    }

    [Theory]
    [InlineData(1_000)]
    [InlineData(6)]
    public void Classic_ReportsInFragments_EveryReportTimeAndField(int fragment)
    {
        using var folder = new TemporaryFolder();
        // The mouse of appendix E.10 with report id 2, which tshark decodes by the boot protocol's codes.
        byte[] descriptor = [.. SampleDescriptors.Mouse.AsSpan(0, 6), 0x85, 0x02, .. SampleDescriptors.Mouse.AsSpan(6)];
        var path = folder.Write("mouse.btsnoop", SampleFiles.BtSnoop(1002, SampleCaptures.Classic(descriptor, SampleCaptures.Reports(11, 200, 4, 2), fragment)));

        var device = Assert.Single(Read(path).Devices);

        var stream = DeviceFields.Of(device, null, new List<string>());
        Assert.Equal(Convert.ToHexStringLower(descriptor), stream.Endpoints[0].ReportDescriptor);
        var payloads = Tshark.Decode(path, "btl2cap.cid==0x42 && btl2cap.payload", ["--disable-protocol", "bthid"], "frame.time_epoch", "btl2cap.payload").ToList();
        Assert.Equal(200, payloads.Count);
        Assert.Equal(payloads.Select(row => (Tshark.Nanoseconds(row[0]), row[1])), Reports(device).Select(report => (report.Time, "a1" + report.Hex)));
        var values = Tshark.Fields(path, "usbhid.boot_report.mouse.x_displacement", "usbhid.boot_report.mouse.x_displacement", "usbhid.boot_report.mouse.y_displacement");
        Assert.Equal(200, values.Count);
        Assert.Equal(values.Select(row => $"{row[0]},{row[1]}"), Enumerable.Range(0, 200).Select(index => Values(stream, device.Log.Data(index), ["x", "y"])));
    }

    [Theory]
    [InlineData("btsnoop")]
    [InlineData("pcapng")]
    [InlineData("monitor")]
    [InlineData("h1")]
    [InlineData("snoop-monitor")]
    public void LowEnergy_Notifications_EveryReportTimeAndDescriptor(string format)
    {
        using var folder = new TemporaryFolder();
        var packets = SampleCaptures.LowEnergy(SampleDescriptors.Gamepad, 1, SampleCaptures.Reports(12, 200, 10));
        var path = format switch
        {
            "btsnoop" => folder.Write("le.btsnoop", SampleFiles.BtSnoop(1002, packets)),
            // H1 and the monitor say in the flags what H4 says in its byte.
            "h1" => folder.Write("le.btsnoop", SampleFiles.BtSnoop(1001, packets.Select(packet => packet with { Data = packet.Data[1..], Flags = packet.Flags | (packet.Data[0] == 4 ? 2u : 0) }))),
            "snoop-monitor" => folder.Write("le.btsnoop", SampleFiles.BtSnoop(2001, packets.Select(packet => packet with { Data = packet.Data[1..], Flags = MonitorOpcode(packet) }))),
            // Link type 201: four bytes of direction before H4.
            "pcapng" => folder.Write("le.pcapng", SampleFiles.PcapNg(201, packets.Select(packet => packet with { Data = [0, 0, 0, (byte)(packet.Flags & 1), .. packet.Data] }))),
            // Link type 254: adapter and opcode in place of H4's byte.
            _ => folder.Write("le.pcapng", SampleFiles.PcapNg(254, packets.Select(packet => packet with { Data = [0, 0, 0, MonitorOpcode(packet), .. packet.Data.AsSpan(1)] }))),
        };

        var device = Assert.Single(Read(path).Devices);

        var stream = DeviceFields.Of(device, null, new List<string>());
        Assert.Equal(Convert.ToHexStringLower(SampleDescriptors.Gamepad), stream.Endpoints[0].ReportDescriptor);
        Assert.Equal((0x14, 1, 7_500L), (stream.Endpoints[0].Number, stream.Endpoints[0].ReportId, stream.Endpoints[0].DeclaredIntervalUs));
        Assert.Equal(17, stream.Fields.Count);
        var rows = Tshark.Fields(path, "btatt.opcode==0x1b", "frame.time_epoch", "btatt.value");
        Assert.Equal(200, rows.Count);
        Assert.Equal(rows.Select(row => (Tshark.Nanoseconds(row[0]), row[1])), Reports(device).Select(report => (report.Time, report.Hex)));
    }

    [Fact]
    public void Text2Pcap_FileWithNanoseconds_IsReadAsTsharkReadsIt()
    {
        using var folder = new TemporaryFolder();
        // The published example of a completion: interrupt IN, bus 3, device 5, endpoint 1, eight bytes.
        const string Packet = "785634128088ffff43018105 0300 2d00 00f1536500000000 28230000 00000000 08000000 08000000 0000000000000000 08000000 00000000 00000000 00000000 01807f10f0000000";
        var bytes = string.Concat(Packet.Where(char.IsAsciiHexDigit));
        var text = folder.Write("packet.txt", "1700000000.009000125\n0000 " + string.Join(' ', bytes.Chunk(2).Select(pair => new string(pair))) + "\n");
        var path = folder["packet.pcapng"];
        Tshark.Run("text2pcap", "-q", "-t", "%s.%f", "-l", "220", text, path);
        Tshark.Run("editcap", "-F", "nsecpcap", path, folder["packet.pcap"]);

        foreach (var file in new[] { path, folder["packet.pcap"] })
        {
            var row = Assert.Single(Tshark.Fields(file, "usb", "frame.time_epoch", "usb.capdata"));
            var report = Assert.Single(Reports(Assert.Single(Read(file).Devices)));
            Assert.Equal((Tshark.Nanoseconds(row[0]), row[1]), (report.Time, report.Hex));
            Assert.Equal("01807f10f0000000", report.Hex);
        }
    }

    private static byte MonitorOpcode(SamplePacket packet) => packet.Data[0] == 4 ? (byte)3 : (packet.Flags & 1) == 1 ? (byte)5 : (byte)4;

    private static byte[] Write(string format, int linkType, List<SamplePacket> packets, bool bigEndian) => format switch
    {
        "pcapng" => SampleFiles.PcapNg(linkType, packets, bigEndian),
        "pcap" => SampleFiles.Pcap(linkType, packets, nanoseconds: false, bigEndian),
        _ => SampleFiles.Pcap(linkType, packets, nanoseconds: true, bigEndian),
    };

    private static InputCapture Read(string path)
    {
        var file = CaptureFile.Read(path, UsbSpeed.Unknown, null, TestContext.Current.CancellationToken);
        Assert.Empty(file.Content.Defects.First);
        return file.Content;
    }

    private static IEnumerable<(long Time, string Hex)> Reports(CapturedDevice device) =>
        Enumerable.Range(0, device.Log.Count).Select(index => (device.Log.Tick(index), Convert.ToHexStringLower(device.Log.Data(index))));

    private static string Values(ReportStream stream, ReadOnlySpan<byte> data, string[] columns)
    {
        var values = new List<string>();
        foreach (var column in columns)
        {
            values.Add(stream.Fields.Single(field => field.Column == column).ValueIn(data)?.ToString(CultureInfo.InvariantCulture) ?? "");
        }

        return string.Join(',', values);
    }
}
