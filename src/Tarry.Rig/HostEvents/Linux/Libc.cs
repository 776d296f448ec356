using System.Reflection;
using System.Runtime.InteropServices;

namespace Tarry.Rig.HostEvents.Linux;

/// <summary>The C library's calls that device files need.</summary>
/// <remarks>
/// They are looked up in the program as a whole and not in the library's own file: so a library that was loaded before it, as test
/// beds of devices do, is asked first.
/// </remarks>
internal static class Libc
{
    public const int ReadOnly = 0;
    public const int WriteOnly = 1;
    public const int NonBlocking = 0x800;
    public const int NoControllingTerminal = 0x100;
    public const int CloseOnExec = 0x80000;
    public const short PollIn = 1;

    public const int NotPermitted = 1;
    public const int Interrupted = 4;
    public const int Again = 11;
    public const int AccessDenied = 13;

    private const string Library = "libc";

    static Libc() => NativeLibrary.SetDllImportResolver(
        Assembly.GetExecutingAssembly(),
        (name, _, _) => name == Library ? NativeLibrary.GetMainProgramHandle() : 0);

    /// <summary>What poll is asked and answers: <c>struct pollfd</c>.</summary>
    [StructLayout(LayoutKind.Sequential)]
    public struct PollRequest
    {
        public int Descriptor;
        public short Asked;
        public short Answered;
    }

    [DllImport(Library, EntryPoint = "open", SetLastError = true)]
    public static extern int Open(byte[] path, int flags, int mode);

    [DllImport(Library, EntryPoint = "close", SetLastError = true)]
    public static extern int Close(int descriptor);

    [DllImport(Library, EntryPoint = "read", SetLastError = true)]
    public static extern nint Read(int descriptor, ref byte buffer, nint count);

    [DllImport(Library, EntryPoint = "write", SetLastError = true)]
    public static extern nint Write(int descriptor, ref byte buffer, nint count);

    [DllImport(Library, EntryPoint = "poll", SetLastError = true)]
    public static extern int Poll(ref PollRequest requests, nuint count, int milliseconds);

    [DllImport(Library, EntryPoint = "ioctl", SetLastError = true)]
    public static extern int Ioctl(int descriptor, nuint request, ref byte data);

    [DllImport(Library, EntryPoint = "ioctl", SetLastError = true)]
    public static extern int Ioctl(int descriptor, nuint request, nint value);

    [DllImport(Library, EntryPoint = "sched_setscheduler", SetLastError = true)]
    public static extern int SetScheduler(int thread, int policy, ref int priority);
}
