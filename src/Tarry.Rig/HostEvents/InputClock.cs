namespace Tarry.Rig.HostEvents;

/// <summary>Whose clock stamped a report, and where.</summary>
public enum InputClock
{
    /// <summary>The kernel's CLOCK_MONOTONIC, when the driver passed the report on.</summary>
    KernelMonotonic,

    /// <summary>The kernel's CLOCK_REALTIME, when the driver passed the report on; it jumps when the time of day is set.</summary>
    KernelRealtime,

    /// <summary>The host's monotonic clock, when this program got the report: the way from the kernel to the program is in it.</summary>
    Arrival,
}
