using System.Runtime.InteropServices;
using Microsoft.Win32.SafeHandles;

namespace Tarry.EchoBenchmark;

/// <summary>The far side of a serial line, as a pseudo-terminal has it.</summary>
internal static class PseudoTerminal
{
    public static (FileStream FarSide, string Port) Open()
    {
        const int readAndWrite = 2;
        const int noControllingTerminal = 0x100;
        var master = OpenMaster(readAndWrite | noControllingTerminal);
        return master >= 0 && Grant(master) == 0 && Unlock(master) == 0
            ? (new FileStream(new SafeFileHandle(master, ownsHandle: true), FileAccess.ReadWrite, 0), Marshal.PtrToStringUTF8(Name(master))!)
            : throw new IOException("This system gives no pseudo-terminal.");
    }

    [DllImport("libc", EntryPoint = "posix_openpt")]
    private static extern int OpenMaster(int flags);

    [DllImport("libc", EntryPoint = "grantpt")]
    private static extern int Grant(int master);

    [DllImport("libc", EntryPoint = "unlockpt")]
    private static extern int Unlock(int master);

    [DllImport("libc", EntryPoint = "ptsname")]
    private static extern nint Name(int master);
}
