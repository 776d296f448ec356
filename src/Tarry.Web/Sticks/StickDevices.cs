using Tarry.Imports.HidReports;
using Tarry.Rig.HostEvents;

namespace Tarry.Web.Sticks;

/// <summary>Which input devices of this computer may have a stick.</summary>
internal static class StickDevices
{
    private const ushort AxisX = 0;
    private const ushort AxisY = 1;
    private const int GenericDesktop = 1;
    private const int UsageOfX = 0x30;

    /// <summary>Those that state the axes x and y, and those that cannot be looked at, with their obstacle.</summary>
    public static IReadOnlyList<HostInputDescription> Of(IReadOnlyList<HostInputDescription> devices) =>
        [.. devices.Where(device => !device.IsTextKeyboard && (device.Obstacle is not null || HasStick(device)))];

    private static bool HasStick(HostInputDescription device) => device.ReportDescriptor.IsEmpty
        ? device.Axes.Any(axis => axis.Code == AxisX) && device.Axes.Any(axis => axis.Code == AxisY)
        : HidReportFields.Of(HidReportDescriptor.Parse(device.ReportDescriptor.Span), endpoint: 0, false).Fields
            .Any(field => !field.IsRelative && field.Usages is [{ Page: GenericDesktop, First: UsageOfX }]);
}
