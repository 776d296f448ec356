using System.Buffers.Binary;
using System.Text;

namespace Tarry.Rig.HostEvents.Linux;

/// <summary>Asks an evdev device what it is and how it stands.</summary>
internal static class EvdevDescription
{
    private const int NameLength = 256;
    private const int KeyBytes = 96;
    private const int AxisBytes = 8;
    private const int RelativeBytes = 2;

    // linux/input.h.
    private static readonly Dictionary<ushort, string> Buses = new()
    {
        [0x01] = "pci", [0x03] = "usb", [0x05] = "bluetooth", [0x06] = "virtual", [0x10] = "isa", [0x11] = "ps/2", [0x18] = "i2c", [0x19] = "host", [0x1c] = "spi",
    };

    public static HostInputDescription Read(DeviceFile file, string path)
    {
        var identity = new byte[8];
        var known = file.Ask(IoctlRequest.Identity, identity) >= 0;
        var buttons = Codes(file, InputCode.Key, KeyBytes);
        return new HostInputDescription
        {
            Path = path,
            Name = Text(file, IoctlRequest.Name(NameLength), NameLength) ?? "(no name)",
            Bus = known ? BusName(BinaryPrimitives.ReadUInt16LittleEndian(identity)) : null,
            Vendor = known ? BinaryPrimitives.ReadUInt16LittleEndian(identity.AsSpan(2)) : null,
            Product = known ? BinaryPrimitives.ReadUInt16LittleEndian(identity.AsSpan(4)) : null,
            Buttons = buttons,
            Axes = [.. Codes(file, InputCode.Absolute, AxisBytes).Select(code => Axis(file, code)).OfType<InputAxis>()],
            IsRelative = Codes(file, InputCode.Relative, RelativeBytes).Count > 0,
            IsTextKeyboard = buttons.Any(InputCode.IsLetter),
        };
    }

    /// <summary>Adds what is down and where the axes stand.</summary>
    public static void ReadState(DeviceFile file, HostInputDescription description, List<InputEvent> events)
    {
        var down = new byte[KeyBytes];
        if (file.Ask(IoctlRequest.KeyState(KeyBytes), down) >= 0)
        {
            events.AddRange(description.Buttons.Select(code => new InputEvent(InputCode.Key, code, Bit(down, code) ? 1 : 0)));
        }

        foreach (var axis in description.Axes)
        {
            if (Axis(file, axis.Code) is { } now)
            {
                events.Add(new InputEvent(InputCode.Absolute, axis.Code, now.Value));
            }
        }
    }

    public static string BusName(ushort bus) => Buses.GetValueOrDefault(bus, $"bus {bus:x4}");

    public static string? Text(DeviceFile file, uint request, int length)
    {
        var bytes = new byte[length];
        return file.Ask(request, bytes) >= 0 ? Encoding.UTF8.GetString(bytes).Split('\0')[0].Trim() : null;
    }

    private static InputAxis? Axis(DeviceFile file, ushort code)
    {
        var bytes = new byte[24];
        if (file.Ask(IoctlRequest.Axis(code), bytes) < 0)
        {
            return null;
        }

        int Number(int index) => BinaryPrimitives.ReadInt32LittleEndian(bytes.AsSpan(4 * index));
        return new InputAxis(code, Minimum: Number(1), Maximum: Number(2), Value: Number(0), Fuzz: Number(3), Flat: Number(4));
    }

    private static List<ushort> Codes(DeviceFile file, ushort type, int length)
    {
        var bits = new byte[length];
        return file.Ask(IoctlRequest.Codes(type, length), bits) < 0
            ? []
            : [.. Enumerable.Range(0, 8 * length).Where(code => Bit(bits, code)).Select(code => (ushort)code)];
    }

    private static bool Bit(byte[] bits, int index) => (bits[index / 8] & (1 << (index % 8))) != 0;
}
