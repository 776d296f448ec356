using System.Buffers.Binary;

namespace Tarry.Imports.PacketCapture.Bluetooth;

/// <summary>What a capture shows of a peripheral's attributes: services, characteristics, report references and report maps.</summary>
/// <remarks>Bluetooth Core, volume 3 part F (attribute protocol) and G; HID over GATT profile: Report Map, Report, Report Reference.</remarks>
internal sealed class AttributeTable
{
    public const int Report = 0x2A4D;
    public const int BootKeyboardInput = 0x2A22;
    public const int BootMouseInput = 0x2A33;
    private const int PrimaryService = 0x2800;
    private const int Characteristic = 0x2803;
    private const int ReportMap = 0x2A4B;
    private const int ReportReference = 0x2908;
    private const int HidService = 0x1812;
    private const int LongestValue = 512 * 128;
    private readonly Dictionary<int, int> types = [];
    private readonly SortedSet<int> valueHandles = [];
    private readonly Dictionary<int, (int Id, int Kind)> references = [];
    private readonly Dictionary<int, byte[]> reportMaps = [];
    private readonly SortedDictionary<int, (int Last, int Service)> services = [];
    private byte[] request = [];

    /// <summary>The type of an attribute; null where its discovery was not captured.</summary>
    public int? TypeOf(int handle) => types.TryGetValue(handle, out var type) ? type : null;

    /// <summary>The report that a characteristic is of: its id and kind (1 input, 2 output, 3 feature); null where not captured.</summary>
    public (int Id, int Kind)? ReferenceOf(int valueHandle)
    {
        // A descriptor lies behind its characteristic's value and before the next one.
        var next = valueHandles.GetViewBetween(valueHandle + 1, 0x10000).Min;
        return references.Where(pair => pair.Key > valueHandle && (next == 0 || pair.Key < next)).Select(pair => ((int, int)?)pair.Value).FirstOrDefault();
    }

    /// <summary>The report map of the service that a characteristic is in; the only one where services were not captured.</summary>
    public byte[]? ReportMapOf(int valueHandle)
    {
        var service = services.LastOrDefault(pair => pair.Key <= valueHandle && valueHandle <= pair.Value.Last);
        return service.Value.Service == HidService
            ? reportMaps.Where(pair => pair.Key >= service.Key && pair.Key <= service.Value.Last).Select(pair => pair.Value).FirstOrDefault()
            : reportMaps.Count == 1 ? reportMaps.Values.First() : null;
    }

    /// <summary>Takes a request of the host.</summary>
    public void TakeRequest(ReadOnlySpan<byte> pdu)
    {
        if (pdu[0] is 0x04 or 0x06 or 0x08 or 0x0A or 0x0C or 0x10)
        {
            request = pdu.ToArray();
        }
    }

    /// <summary>Takes a response of the peripheral, to the last request.</summary>
    public void TakeResponse(ReadOnlySpan<byte> pdu)
    {
        switch (pdu[0])
        {
            case 0x05 when pdu.Length >= 2 && pdu[1] == 1:
                for (var rest = pdu[2..]; rest.Length >= 4; rest = rest[4..])
                {
                    types[UInt16(rest)] = UInt16(rest[2..]);
                }

                break;
            case 0x07 when request is [0x06, _, _, _, _, 0x00, 0x28, _, _]:
                for (var rest = pdu[1..]; rest.Length >= 4; rest = rest[4..])
                {
                    services[UInt16(rest)] = (UInt16(rest[2..]), UInt16(request.AsSpan(7)));
                }

                break;
            case 0x09 when pdu.Length >= 2 && request.Length == 7 && request[0] == 0x08:
                TakeByType(pdu[2..], pdu[1], UInt16(request.AsSpan(5)));
                break;
            case 0x0B when request.Length >= 3 && request[0] == 0x0A:
                TakeValue(UInt16(request.AsSpan(1)), 0, pdu[1..]);
                break;
            case 0x0D when request.Length >= 5 && request[0] == 0x0C:
                TakeValue(UInt16(request.AsSpan(1)), UInt16(request.AsSpan(3)), pdu[1..]);
                break;
            case 0x11 when pdu.Length >= 2 && pdu[1] == 6 && request.Length == 7 && UInt16(request.AsSpan(5)) == PrimaryService:
                for (var rest = pdu[2..]; rest.Length >= 6; rest = rest[6..])
                {
                    services[UInt16(rest)] = (UInt16(rest[2..]), UInt16(rest[4..]));
                }

                break;
        }
    }

    private void TakeByType(ReadOnlySpan<byte> list, int length, int type)
    {
        for (; length >= 3 && list.Length >= length; list = list[length..])
        {
            var handle = UInt16(list);
            if (type != Characteristic)
            {
                types[handle] = type;
                TakeValue(handle, 0, list[2..length]);
            }
            else if (length >= 7)
            {
                var value = UInt16(list[3..]);
                valueHandles.Add(value);
                // Of a 128-bit type nothing is needed but that it is no report.
                types[value] = length == 7 ? UInt16(list[5..]) : 0;
            }
        }
    }

    private void TakeValue(int handle, int offset, ReadOnlySpan<byte> value)
    {
        switch (TypeOf(handle))
        {
            case ReportReference when offset == 0 && value.Length >= 2:
                references[handle] = (value[0], value[1]);
                break;
            case ReportMap when offset + value.Length <= LongestValue:
                var known = offset == 0 ? [] : reportMaps.GetValueOrDefault(handle) ?? [];
                if (known.Length >= offset)
                {
                    reportMaps[handle] = [.. known.AsSpan(0, offset), .. value];
                }

                break;
        }
    }

    private static int UInt16(ReadOnlySpan<byte> at) => BinaryPrimitives.ReadUInt16LittleEndian(at);
}
