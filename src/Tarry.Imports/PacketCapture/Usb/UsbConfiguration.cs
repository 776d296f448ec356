using System.Buffers.Binary;

namespace Tarry.Imports.PacketCapture.Usb;

/// <summary>Reads the endpoints of a configuration descriptor with all that belongs to it (USB 2.0, 9.6.3 to 9.6.6).</summary>
internal static class UsbConfiguration
{
    private const int Interface = 4;
    private const int Endpoint = 5;

    /// <summary>The endpoints by address, the first setting of each; null where the descriptor is not whole.</summary>
    public static Dictionary<int, UsbEndpoint>? Endpoints(ReadOnlySpan<byte> descriptor)
    {
        if (descriptor.Length < 9 || descriptor[1] != 2 || BinaryPrimitives.ReadUInt16LittleEndian(descriptor[2..]) > descriptor.Length)
        {
            return null;
        }

        var endpoints = new Dictionary<int, UsbEndpoint>();
        var (number, interfaceClass) = (0, 0);
        for (var rest = descriptor; rest.Length >= 2 && rest[0] >= 2 && rest[0] <= rest.Length; rest = rest[rest[0]..])
        {
            switch (rest[1])
            {
                case Interface when rest[0] >= 9:
                    (number, interfaceClass) = (rest[2], rest[5]);
                    break;
                case Endpoint when rest[0] >= 7:
                    endpoints.TryAdd(rest[2], new UsbEndpoint(rest[2], number, interfaceClass, rest[3], BinaryPrimitives.ReadUInt16LittleEndian(rest[4..]) & 0x7FF, rest[6]));
                    break;
            }
        }

        return endpoints;
    }
}
