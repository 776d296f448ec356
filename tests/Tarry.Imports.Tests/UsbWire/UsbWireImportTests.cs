using Tarry.Imports.UsbWire;
using Tarry.Tests;

namespace Tarry.Imports.Tests.UsbWire;

/// <summary>
/// A mouse on the wire: sigrokproject/sigrok-dumps, public domain, turned into a value change dump by sigrok-cli. Its reports come
/// 7,999 to 8,001 us apart, as sigrok's own decoders find; it is not part of this repository.
/// </summary>
public class UsbWireImportTests
{
    [Fact]
    public void Recording_OfAMouse_HasReportsEveryEightMilliseconds()
    {
        var reading = UsbWireImport.Read(Recording(), "DP", "DM", UsbSpeed.Low, cancellation: TestContext.Current.CancellationToken);
        Assert.Equal(11, reading.Reports.Count);
        Assert.Equal(0, reading.BadPackets);
        Assert.All(reading.IntervalsMicroseconds, interval => Assert.InRange(interval, 7_999, 8_001));
        Assert.Equal(10, reading.IntervalsMicroseconds.Count);
    }

    [Fact]
    public void Recording_WithLinesSwapped_HasNoReports() =>
        Assert.Empty(UsbWireImport.Read(Recording(), "DM", "DP", UsbSpeed.Low, cancellation: TestContext.Current.CancellationToken).Reports);

    private static string Recording()
    {
        for (var folder = new DirectoryInfo(AppContext.BaseDirectory); folder is not null; folder = folder.Parent)
        {
            var file = Path.Combine(folder.FullName, "..", "shared", "recordings", "usb-mouse-wire.vcd");
            if (File.Exists(file))
            {
                return file;
            }
        }

        Assert.Skip("needs the recording usb-mouse-wire.vcd, which is not part of the repository");
        return "";
    }
}
