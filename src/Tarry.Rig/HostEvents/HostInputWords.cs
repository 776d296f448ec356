using System.Globalization;

namespace Tarry.Rig.HostEvents;

/// <summary>Devices in words.</summary>
public static class HostInputWords
{
    /// <summary>How a device is known: bus, vendor and product as far as the system says, and its path.</summary>
    public static string Identity(this HostInputDescription device)
    {
        ArgumentNullException.ThrowIfNull(device);
        var numbers = device is { Vendor: { } vendor, Product: { } product }
            ? string.Create(CultureInfo.InvariantCulture, $"{vendor:x4}:{product:x4}")
            : null;
        return string.Join(' ', new[] { device.Bus, numbers, device.Path }.OfType<string>());
    }
}
