using Tarry.Imports.PacketCapture.Usb;

namespace Tarry.Imports.Tests.PacketCapture;

public sealed class UsbDeviceTests
{
    /// <summary>Two HID interfaces of one device: at 1 frame the driver's interval is the same at both speeds, at 8 it is not.</summary>
    private static readonly byte[] TwoInterfaces =
    [
        9, 2, 59, 0, 2, 1, 0, 0x80, 50,
        9, 4, 0, 0, 1, 3, 0, 0, 0, 9, 0x21, 0x11, 1, 0, 1, 0x22, 50, 0, 7, 5, 0x81, 3, 16, 0, 1,
        9, 4, 1, 0, 1, 3, 0, 0, 0, 9, 0x21, 0x11, 1, 0, 1, 0x22, 60, 0, 7, 5, 0x83, 3, 16, 0, 8,
    ];

    [Theory]
    [InlineData(8, "low-or-full", 1_000L, 8_000L)]
    [InlineData(128, "high", 125L, 16_000L)]
    public void ReportEndpoints_SpeedThatOneEndpointTells_IsThatOfTheDevice(int driverInterval, string speed, long firstUs, long secondUs)
    {
        var endpoints = Device((0x81, 1), (0x83, driverInterval)).ReportEndpoints(UsbSpeed.Unknown).Select(item => item.Endpoint).ToList();
        Assert.Equal([(speed, firstUs), (speed, secondUs)], endpoints.Select(endpoint => (endpoint.Speed!, endpoint.DeclaredIntervalUs!.Value)));
    }

    [Fact]
    public void ReportEndpoints_NoEndpointTellsTheSpeed_LeaveItOpen() =>
        Assert.All(Device((0x81, 1), (0x83, 0)).ReportEndpoints(UsbSpeed.Unknown), item => Assert.Null(item.Endpoint.Speed));

    private static UsbDevice Device(params (int Endpoint, int DriverInterval)[] transfers)
    {
        var device = new UsbDevice(1, 5);
        device.TakeConfiguration(TwoInterfaces);
        foreach (var (endpoint, interval) in transfers)
        {
            device.TakeReport(
                new UsbTransfer
                {
                    Id = 1,
                    Bus = 1,
                    Device = 5,
                    Endpoint = endpoint,
                    Type = UsbTransferType.Interrupt,
                    IsCompletion = true,
                    Succeeded = true,
                    Interval = interval,
                    Data = [1, 2],
                    CutShort = false,
                },
                0);
        }

        return device;
    }
}
