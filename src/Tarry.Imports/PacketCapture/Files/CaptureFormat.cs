namespace Tarry.Imports.PacketCapture.Files;

/// <summary>A file format of packet captures.</summary>
public enum CaptureFormat
{
    /// <summary>libpcap's format, with microseconds or nanoseconds.</summary>
    Pcap,

    /// <summary>The block format that follows it.</summary>
    PcapNg,

    /// <summary>Bluetooth snoop logs.</summary>
    BtSnoop,
}
