using System.Buffers.Binary;
using System.Globalization;
using System.Runtime.InteropServices;
using System.Text;

namespace Tarry.Rig.HostEvents.Windows;

/// <summary>Windows: Raw Input.</summary>
internal sealed class RawInputSystem : IHostInputSystem
{
    private const uint Keyboard = 1;
    private const uint Hid = 2;
    private const uint Failed = uint.MaxValue;

    public IReadOnlyList<HostInputDescription> List() =>
        [.. Devices().Select(entry => entry.Description).OrderBy(description => description.Path, StringComparer.OrdinalIgnoreCase)];

    public IHostInputDevice Open(string path, bool exclusive)
    {
        if (exclusive)
        {
            throw new HostInputException("Windows does not keep a device's events from other programs.", "Go on without --exclusive.");
        }

        var found = Devices().FirstOrDefault(entry => entry.Description.Path.Equals(path, StringComparison.OrdinalIgnoreCase));
        return found.Description is null
            ? throw new HostInputException($"There is no input device {path}.", "'tarry host devices' lists those there are; plug it in, or give another path.")
            : new RawInputDevice(found.Handle, found.Page, found.Usage, found.Description, TimeProvider.System);
    }

    public IEnumerable<HostInputStep> Check()
    {
        var devices = Devices().ToList();
        yield return new HostInputStep("list devices (GetRawInputDeviceList)", devices.Count > 0, $"{devices.Count.ToString(CultureInfo.InvariantCulture)} devices");
        foreach (var entry in devices)
        {
            string found;
            var worked = true;
            try
            {
                using var device = new RawInputDevice(entry.Handle, entry.Page, entry.Usage, entry.Description, TimeProvider.System);
                device.Read(TimeSpan.FromMilliseconds(50), _ => { });
                found = $"{entry.Description.Name}: message-only window made, usage {entry.Page:x2}:{entry.Usage:x2} registered, messages awaited";
            }
            catch (HostInputException exception)
            {
                (worked, found) = (false, exception.Message);
            }

            yield return new HostInputStep($"open {entry.Description.Path}", worked, found);
        }

        yield return new HostInputStep("raise a thread's priority", RealTimePriority.IsAllowed(), "highest priority of a thread");
    }

    private static IEnumerable<(nint Handle, ushort Page, ushort Usage, HostInputDescription Description)> Devices()
    {
        var size = (uint)Marshal.SizeOf<User32.RawInputDeviceListEntry>();
        uint count = 0;
        _ = User32.GetRawInputDeviceList(null, ref count, size);
        var entries = new User32.RawInputDeviceListEntry[count];
        var filled = count == 0 ? 0 : User32.GetRawInputDeviceList(entries, ref count, size);
        return filled == Failed
            ? throw new HostInputException("Windows does not list its input devices.", "Try again; a device may just have come or gone.")
            : entries.Take((int)filled).Select(Describe).Where(entry => entry.Description.Path.Length > 0);
    }

    private static (nint Handle, ushort Page, ushort Usage, HostInputDescription Description) Describe(User32.RawInputDeviceListEntry entry)
    {
        // RID_DEVICE_INFO: cbSize, dwType, then of a HID dwVendorId, dwProductId, dwVersionNumber, usUsagePage, usUsage.
        var info = Info(entry.Device, User32.DeviceInfo, characters: false);
        var isHid = entry.Kind == Hid && info.Length >= 24;
        var path = Encoding.Unicode.GetString(Info(entry.Device, User32.DeviceName, characters: true)).TrimEnd('\0');
        const ushort genericDesktop = 1;
        const ushort mouse = 2;
        const ushort keyboard = 6;
        return (
            entry.Device,
            isHid ? BinaryPrimitives.ReadUInt16LittleEndian(info.AsSpan(20)) : genericDesktop,
            isHid ? BinaryPrimitives.ReadUInt16LittleEndian(info.AsSpan(22)) : entry.Kind == Keyboard ? keyboard : mouse,
            new HostInputDescription
            {
                Path = path,
                Name = entry.Kind switch { Keyboard => "keyboard", Hid => "HID device", _ => "mouse" },
                Vendor = isHid ? (ushort)BinaryPrimitives.ReadUInt32LittleEndian(info.AsSpan(8)) : null,
                Product = isHid ? (ushort)BinaryPrimitives.ReadUInt32LittleEndian(info.AsSpan(12)) : null,
                IsTextKeyboard = entry.Kind == Keyboard,
                IsRelative = entry.Kind == 0,
            });
    }

    private static byte[] Info(nint device, uint command, bool characters)
    {
        uint size = 0;
        _ = User32.GetRawInputDeviceInfo(device, command, null, ref size);
        var data = new byte[characters ? 2 * size : size];
        if (!characters && size >= sizeof(uint))
        {
            BinaryPrimitives.WriteUInt32LittleEndian(data, size);
        }

        return data.Length > 0 && User32.GetRawInputDeviceInfo(device, command, data, ref size) != Failed ? data : [];
    }
}
