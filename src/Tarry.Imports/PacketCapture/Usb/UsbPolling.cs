namespace Tarry.Imports.PacketCapture.Usb;

/// <summary>What <c>bInterval</c> of an interrupt endpoint means (USB 2.0, table 9-13).</summary>
public static class UsbPolling
{
    private const int FrameUs = 1_000;
    private const int MicroframeUs = 125;

    /// <summary>The polling interval in microseconds: frames of 1 ms at low and full speed, 2^(bInterval - 1) microframes of 125 us at high speed; null where the value cannot be one.</summary>
    public static long? IntervalUs(UsbSpeed speed, int bInterval) => speed switch
    {
        UsbSpeed.LowOrFull when bInterval is >= 1 and <= 255 => bInterval * (long)FrameUs,
        UsbSpeed.High when bInterval is >= 1 and <= 16 => (1L << (bInterval - 1)) * MicroframeUs,
        _ => null,
    };

    /// <summary>
    /// The speed that the descriptors and the driver's own interval leave open no doubt of: packets of more than 64 bytes are of high
    /// speed, a control endpoint of 8 to 32 bytes is not (USB 2.0, 5.5.3 and 5.7.3); the driver of a high-speed endpoint counts 2^(bInterval - 1) microframes.
    /// </summary>
    internal static UsbSpeed Infer(UsbEndpoint endpoint, int? maxPacketOfControl, int driverInterval)
    {
        if (endpoint.MaxPacketBytes > 64)
        {
            return UsbSpeed.High;
        }

        if (maxPacketOfControl is 8 or 16 or 32)
        {
            return UsbSpeed.LowOrFull;
        }

        var asHigh = endpoint.BInterval is >= 1 and <= 16 ? 1 << (endpoint.BInterval - 1) : 0;
        return asHigh == endpoint.BInterval || driverInterval <= 0 ? UsbSpeed.Unknown
            : driverInterval == asHigh ? UsbSpeed.High
            : driverInterval <= endpoint.BInterval ? UsbSpeed.LowOrFull
            : UsbSpeed.Unknown;
    }
}
