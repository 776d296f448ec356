using Tarry.Rig.HostEvents.Linux;

namespace Tarry.Rig.HostEvents;

/// <summary>Asks the system to let a thread run before all others.</summary>
internal static class RealTimePriority
{
    // SCHED_FIFO of sched.h; priority 10 of 99: before all that is not in real time, after the kernel's own threads.
    private const int FirstInFirstOut = 1;
    private const int AboveTheRest = 10;

    /// <summary>Raises the calling thread.</summary>
    /// <returns>Whether the system allowed it; on Linux that takes CAP_SYS_NICE or an rtprio limit.</returns>
    public static bool TryRaise()
    {
        if (OperatingSystem.IsLinux())
        {
            var priority = AboveTheRest;
            return Libc.SetScheduler(0, FirstInFirstOut, ref priority) == 0;
        }

        Thread.CurrentThread.Priority = ThreadPriority.Highest;
        return OperatingSystem.IsWindows();
    }

    /// <summary>Whether a thread of this program would be raised.</summary>
    public static bool IsAllowed()
    {
        var allowed = false;
        var thread = new Thread(() => allowed = TryRaise());
        thread.Start();
        thread.Join();
        return allowed;
    }
}
