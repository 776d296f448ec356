using Tarry.Imports.PacketCapture;
using Tarry.Imports.PacketCapture.Usb;
using Tarry.Studies.Reports;
using Tarry.Tests;

namespace Tarry.Imports.Tests.PacketCapture;

/// <summary>Captures that others made, beside the repository; where they are not there the tests skip. The truth is tshark's, or the recording's own.</summary>
public class RecordingTests
{
    [Fact]
    public void MouseOnTheWire_ReportInterval_IsEightMilliseconds()
    {
        var device = Assert.Single(Read("usb-mouse-wire.pcap").Devices);

        Assert.Equal(11, device.Reports);
        // Measured on the wire: its reports come 7,999 to 8,001 us apart.
        Assert.All(Enumerable.Range(1, 10), index => Assert.InRange(device.Log.Tick(index) - device.Log.Tick(index - 1), 7_999_000, 8_001_000));
        Agree("usb-mouse-wire.pcap", device, "usb.capdata && usb.urb_type=='C' && usb.endpoint_address==0x81", "usb.capdata");
    }

    [Fact]
    public void KeyboardOverUsbmon_ReportsAndTimes_AreThoseOfTshark()
    {
        var device = Assert.Single(Read("usb-keyboard-usbmon.pcap").Devices);

        Assert.Equal(92, Agree("usb-keyboard-usbmon.pcap", device, "usb.capdata && usb.transfer_type==1 && usb.urb_type=='C' && usb.endpoint_address.direction==1", "usb.capdata"));
    }

    [Fact]
    public void KeyboardOverLowEnergy_NotificationsAndReportMap_AreThoseOfTshark()
    {
        var device = Assert.Single(Read("ble-keyboard.btsnoop").Devices);

        Assert.Equal(1_118, Agree("ble-keyboard.btsnoop", device, "btatt.opcode==0x1b", "btatt.value"));
        var stream = DeviceFields.Of(device, null, new List<string>());
        // tshark gives the parts that were read on (from byte 22); the first it takes for the value of another attribute, and has its bytes.
        var rest = string.Concat(Tshark.Fields(Path("ble-keyboard.btsnoop"), "btatt.opcode==0x0d && btatt.handle==0x002a", "btatt.value").Select(row => row[0]));
        var map = stream.Endpoints[0].ReportDescriptor!;
        Assert.Equal(rest, map[44..]);
        Assert.Single(Tshark.Fields(Path("ble-keyboard.btsnoop"), $"btatt.opcode==0x0b && frame contains {string.Join(':', map[..44].Chunk(2).Select(pair => new string(pair)))}", "frame.number"));
        Assert.Equal([1, 17], stream.Endpoints.Select(endpoint => endpoint.ReportId));
        Assert.Contains(stream.Fields, field => field.Column == "key_slot_1");
    }

    private static int Agree(string name, CapturedDevice device, string filter, string field)
    {
        var rows = Tshark.Fields(Path(name), filter, "frame.time_epoch", field);
        ReportLog log = device.Log;
        Assert.Equal(
            rows.Select(row => (Tshark.Nanoseconds(row[0]), row[1])),
            Enumerable.Range(0, log.Count).Select(index => (log.Tick(index), Convert.ToHexStringLower(log.Data(index)))));
        return rows.Count;
    }

    private static InputCapture Read(string name)
    {
        var file = CaptureFile.Read(Path(name), UsbSpeed.Unknown, null, TestContext.Current.CancellationToken);
        Assert.Empty(file.Content.Defects.First);
        return file.Content;
    }

    private static string Path(string name)
    {
        for (var folder = new DirectoryInfo(AppContext.BaseDirectory); folder is not null; folder = folder.Parent)
        {
            var path = System.IO.Path.Combine(folder.FullName, "shared", "recordings", name);
            if (File.Exists(path))
            {
                return path;
            }
        }

        Assert.Skip($"needs the recording {name} beside the repository");
        return "";
    }
}
