using Tarry.Imports.PacketCapture;
using Tarry.Imports.PacketCapture.Usb;
using Tarry.Imports.UsbWire;
using Tarry.Studies.Reports;

namespace Tarry.Imports.Tests.UsbWire;

/// <summary>
/// A mouse on the wire: sigrokproject/sigrok-dumps, public domain, turned into a value change dump by sigrok-cli, and into a packet capture by
/// sigrok's own USB decoders. Its reports come 7,999 to 8,001 us apart, as those decoders find; it is not part of this repository.
/// </summary>
public class UsbCableRecordingTests
{
    private static readonly UsbCable Mouse = new("DP", "DM", UsbCableSpeed.Low);

    [Fact]
    public void Recording_OfAMouse_HasReportsEveryEightMilliseconds()
    {
        var device = Assert.Single(Read(Mouse).Content.Devices);
        Assert.Equal(11, device.Reports);
        Assert.All(Intervals(device.Log), interval => Assert.InRange(interval, 7_999_000, 8_001_000));
    }

    [Fact]
    public void Recording_OfAMouse_HasTheReportsOfItsPacketCapture()
    {
        var wire = Assert.Single(Read(Mouse).Content.Devices);
        var capture = CaptureFile.Read(Recording("usb-mouse-wire.pcap"), UsbSpeed.Unknown, null, TestContext.Current.CancellationToken);
        var captured = Assert.Single(capture.Content.Devices);
        Assert.Equal(captured.Endpoints.Select(endpoint => endpoint.Endpoint.Number), wire.Endpoints.Select(endpoint => endpoint.Endpoint.Number));
        Assert.Equal(Reports(captured.Log), Reports(wire.Log));
        // The other decoder stamps a transfer with its own choice of edge, in whole microseconds; the wire was sampled each 10 ns.
        Assert.All(Intervals(captured.Log).Zip(Intervals(wire.Log)), pair => Assert.InRange(pair.First - pair.Second, -1_100, 1_100));
    }

    [Fact]
    public void Recording_MadeByTheSpecification_HasItsReports()
    {
        using var folder = new TemporaryFolder();
        byte[][] reports = [[0, 1, 255, 0], [0xFF, 0xFF, 0xFF, 0xFF], [0x80, 0x7E, 0, 1]];
        var device = Assert.Single(UsbCableRecording.Read(folder.Write("cable.vcd", CableText.Of(reports)), Mouse, cancellation: TestContext.Current.CancellationToken).Content.Devices);
        Assert.Equal(reports.Select(Convert.ToHexStringLower), Reports(device.Log));
        Assert.Equal("1209:0001", device.ProductId);
        // Polls are 8 ms apart, behind the three packets of the report before, which stuffed bits lengthen.
        Assert.All(Intervals(device.Log), interval => Assert.InRange(interval, 8_000_000, 8_200_000));
    }

    [Theory]
    [InlineData("DM", "DP", UsbCableSpeed.Low)]
    [InlineData("DP", "DM", UsbCableSpeed.Full)]
    public void Recording_ReadWrongly_IsRefusedWithWhatToCheck(string plus, string minus, UsbCableSpeed speed)
    {
        var refused = Assert.Throws<ImportException>(() => Read(new UsbCable(plus, minus, speed)));
        Assert.Contains("--usb-plus-channel", refused.Remedy, StringComparison.Ordinal);
        Assert.Contains("--usb-speed", refused.Remedy, StringComparison.Ordinal);
    }

    [Fact]
    public void Recording_WithOneLineForBoth_IsRefused() =>
        Assert.Contains("Both data lines", Assert.Throws<ImportException>(() => Read(new UsbCable("DP", "DP", UsbCableSpeed.Low))).Problem, StringComparison.Ordinal);

    private static CaptureFile Read(UsbCable cable) =>
        UsbCableRecording.Read(Recording("usb-mouse-wire.vcd"), cable, cancellation: TestContext.Current.CancellationToken);

    private static IEnumerable<long> Intervals(ReportLog log) => Enumerable.Range(1, log.Count - 1).Select(index => log.Tick(index) - log.Tick(index - 1));

    private static IEnumerable<string> Reports(ReportLog log) => Enumerable.Range(0, log.Count).Select(index => Convert.ToHexStringLower(log.Data(index)));

    private static string Recording(string name)
    {
        for (var folder = new DirectoryInfo(AppContext.BaseDirectory); folder is not null; folder = folder.Parent)
        {
            var file = Path.Combine(folder.FullName, "shared", "recordings", name);
            if (File.Exists(file))
            {
                return file;
            }
        }

        Assert.Skip($"needs the recording {name}, which is not part of the repository");
        return "";
    }
}
