using System.Runtime.InteropServices;
using System.Text;

namespace Tarry.Studies.Disk;

/// <summary>Flushes a folder's own entries to the disk, so that a rename survives a power cut.</summary>
/// <remarks>
/// .NET opens no folders, so on Linux and macOS this calls <c>open</c> and <c>fsync</c> of POSIX.1-2017. On Windows it does nothing:
/// a folder cannot be flushed there, and NTFS keeps renames in its own log.
/// </remarks>
internal static partial class FolderFlush
{
    private const int OpenReadOnly = 0;

    /// <summary>Flushes the folder.</summary>
    public static void Flush(string folder)
    {
        if (OperatingSystem.IsWindows())
        {
            return;
        }

        var descriptor = Open(Encoding.UTF8.GetBytes(folder + "\0"), OpenReadOnly);
        if (descriptor < 0)
        {
            throw Failed(folder);
        }

        try
        {
            // Some network file systems cannot flush a folder (EINVAL) and need not.
            const int invalid = 22;
            if (Synchronise(descriptor) != 0 && Marshal.GetLastPInvokeError() != invalid)
            {
                throw Failed(folder);
            }
        }
        finally
        {
            _ = Close(descriptor);
        }
    }

    private static IOException Failed(string folder)
    {
        var code = Marshal.GetLastPInvokeError();
        return new IOException($"The folder '{folder}' could not be flushed: {Marshal.GetPInvokeErrorMessage(code)}", code);
    }

    [LibraryImport("libc", EntryPoint = "open", SetLastError = true)]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static partial int Open(byte[] path, int flags);

    [LibraryImport("libc", EntryPoint = "fsync", SetLastError = true)]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static partial int Synchronise(int descriptor);

    [LibraryImport("libc", EntryPoint = "close", SetLastError = true)]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static partial int Close(int descriptor);
}
