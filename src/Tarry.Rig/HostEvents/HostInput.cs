using Tarry.Rig.HostEvents.Linux;
using Tarry.Rig.HostEvents.Windows;

namespace Tarry.Rig.HostEvents;

/// <summary>The input devices of the machine that the program runs on.</summary>
public static class HostInput
{
    /// <summary>Linux by evdev and hidraw, Windows by Raw Input; elsewhere one that says that it is not there yet.</summary>
    public static IHostInputSystem OfThisMachine() =>
        OperatingSystem.IsLinux() ? new LinuxInputSystem("/dev/input", "/dev")
        : OperatingSystem.IsWindows() ? new RawInputSystem()
        : new AbsentInputSystem();
}
