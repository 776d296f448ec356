using System.Buffers.Binary;

namespace Tarry.Imports.PacketCapture.Bluetooth;

/// <summary>Which service each dynamic channel of a link is connected to (Bluetooth Core, volume 3 part A, 4.2 and 4.3).</summary>
internal sealed class L2capChannels
{
    public const int ServiceDiscovery = 0x0001;
    public const int HidControl = 0x0011;
    public const int HidInterrupt = 0x0013;
    private const int ConnectionRequest = 2;
    private const int ConnectionResponse = 3;
    private const int DisconnectionRequest = 6;
    private const int MostPending = 1_024;
    private readonly Dictionary<(bool ByHost, byte Identifier), (int Service, int Source)> requests = [];
    private readonly Dictionary<int, int> services = [];

    /// <summary>The service of a channel by the host's number of it; null where its connection was not captured.</summary>
    public int? ServiceOf(int hostChannel) => services.TryGetValue(hostChannel, out var service) ? service : null;

    /// <summary>Takes a frame of the signalling channel.</summary>
    public void TakeSignal(ReadOnlySpan<byte> payload, bool received)
    {
        while (payload.Length >= 4)
        {
            var length = BinaryPrimitives.ReadUInt16LittleEndian(payload[2..]);
            if (length > payload.Length - 4)
            {
                return;
            }

            Take(payload[0], payload[1], payload.Slice(4, length), received);
            payload = payload[(4 + length)..];
        }
    }

    private void Take(int code, byte identifier, ReadOnlySpan<byte> data, bool received)
    {
        switch (code)
        {
            case ConnectionRequest when data.Length >= 4 && requests.Count < MostPending:
                requests[(!received, identifier)] = (BinaryPrimitives.ReadUInt16LittleEndian(data), BinaryPrimitives.ReadUInt16LittleEndian(data[2..]));
                break;
            case ConnectionResponse when data.Length >= 8 && requests.TryGetValue((received, identifier), out var request):
                // Result 1 is "pending": a second response follows.
                if (BinaryPrimitives.ReadUInt16LittleEndian(data[4..]) == 0)
                {
                    requests.Remove((received, identifier));
                    services[received ? request.Source : BinaryPrimitives.ReadUInt16LittleEndian(data)] = request.Service;
                }

                break;
            case DisconnectionRequest when data.Length >= 4:
                services.Remove(BinaryPrimitives.ReadUInt16LittleEndian(received ? data : data[2..]));
                break;
        }
    }
}
