using System.Runtime.InteropServices;
using System.Text;

namespace Tarry.Rig.HostEvents.Linux;

/// <summary>An open device file.</summary>
internal sealed class DeviceFile : IDisposable
{
    private int descriptor;

    private DeviceFile(int descriptor) => this.descriptor = descriptor;

    /// <summary>Opens a file, or returns null and says why.</summary>
    public static DeviceFile? TryOpen(string path, int flags, out int error)
    {
        var descriptor = Libc.Open([.. Encoding.UTF8.GetBytes(path), 0], flags | Libc.NonBlocking | Libc.CloseOnExec, 0);
        error = descriptor < 0 ? Marshal.GetLastPInvokeError() : 0;
        return descriptor < 0 ? null : new DeviceFile(descriptor);
    }

    /// <summary>Waits until there is something to read.</summary>
    public void Wait(TimeSpan timeout)
    {
        var request = new Libc.PollRequest { Descriptor = descriptor, Asked = Libc.PollIn };
        _ = Libc.Poll(ref request, 1, (int)Math.Clamp(timeout.TotalMilliseconds, 0, int.MaxValue));
    }

    /// <summary>Reads once.</summary>
    /// <returns>How many bytes; 0 if there are none now; -1 if the device is gone.</returns>
    public int Read(Span<byte> buffer)
    {
        var count = (int)Libc.Read(descriptor, ref MemoryMarshal.GetReference(buffer), buffer.Length);
        return count > 0 ? count
            : count < 0 && Marshal.GetLastPInvokeError() is Libc.Again or Libc.Interrupted ? 0
            : -1;
    }

    /// <summary>Writes once.</summary>
    /// <returns>Whether all of it was taken.</returns>
    public bool Write(ReadOnlySpan<byte> bytes) =>
        Libc.Write(descriptor, ref MemoryMarshal.GetReference(bytes), bytes.Length) == bytes.Length;

    /// <summary>Asks the driver.</summary>
    /// <returns>Its answer; negative where it has none.</returns>
    public int Ask(uint request, Span<byte> data) => Libc.Ioctl(descriptor, request, ref MemoryMarshal.GetReference(data));

    /// <summary>Tells the driver a number.</summary>
    public bool Tell(uint request, int value) => Libc.Ioctl(descriptor, request, value) >= 0;

    public void Dispose()
    {
        if (descriptor >= 0)
        {
            _ = Libc.Close(descriptor);
            descriptor = -1;
        }
    }
}
