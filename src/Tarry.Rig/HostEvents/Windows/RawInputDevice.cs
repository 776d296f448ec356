using System.Runtime.InteropServices;

namespace Tarry.Rig.HostEvents.Windows;

/// <summary>One device's Raw Input, by a message-only window of the thread that reads. Windows stamps nothing, so arrival is stamped here.</summary>
internal sealed class RawInputDevice(nint device, ushort page, ushort usage, HostInputDescription description, TimeProvider time) : IHostInputDevice
{
    private const uint Failed = uint.MaxValue;
    private static readonly uint HeaderSize = (uint)RawInputMessage.HeaderLength(nint.Size);
    private byte[] buffer = new byte[256];
    private nint window;

    public HostInputDescription Description => description;

    public InputClock Clock => InputClock.Arrival;

    public long Losses => 0;

    /// <summary>The window belongs to the thread that makes it, so it is made at the first read.</summary>
    public bool Read(TimeSpan timeout, InputReportHandler onReport)
    {
        ArgumentNullException.ThrowIfNull(onReport);
        if (window == 0)
        {
            Listen();
        }

        const uint alsoWhatIsThere = 4;
        if (User32.PeekMessage(out var message, window, 0, 0, User32.Remove) == 0)
        {
            _ = User32.MsgWaitForMultipleObjectsEx(0, 0, (uint)Math.Clamp(timeout.TotalMilliseconds, 0, int.MaxValue), User32.AllInput, alsoWhatIsThere);
            if (User32.PeekMessage(out message, window, 0, 0, User32.Remove) == 0)
            {
                return true;
            }
        }

        do
        {
            if (message.Number == User32.WmInput)
            {
                Take(message.LParam, onReport);
            }

            _ = User32.DispatchMessage(ref message);
        }
        while (User32.PeekMessage(out message, window, 0, 0, User32.Remove) != 0);
        return true;
    }

    public void Dispose()
    {
        if (window != 0)
        {
            _ = User32.DestroyWindow(window);
            window = 0;
        }
    }

    private void Take(nint input, InputReportHandler onReport)
    {
        var stamp = Clock.Now(time);
        uint needed = 0;
        _ = User32.GetRawInputDataSize(input, User32.RawInputData, 0, ref needed, HeaderSize);
        if (needed > buffer.Length)
        {
            buffer = new byte[needed];
        }

        var size = (uint)buffer.Length;
        var count = User32.GetRawInputData(input, User32.RawInputData, ref buffer[0], ref size, HeaderSize);
        if (count == Failed)
        {
            return;
        }

        var message = buffer.AsSpan(0, (int)count);
        if (RawInputMessage.Device(message, nint.Size) == device)
        {
            RawInputMessage.Read(message, nint.Size, stamp, onReport);
        }
    }

    private void Listen()
    {
        // A class of the system: the messages are taken before they reach its procedure.
        window = User32.CreateWindow(0, "STATIC", null, 0, 0, 0, 0, 0, User32.MessageOnly, 0, 0, 0);
        var registration = new User32.RawInputRegistration { UsagePage = page, Usage = usage, Flags = User32.InputSink, Target = window };
        if (window == 0 || User32.RegisterRawInputDevices([registration], 1, (uint)Marshal.SizeOf<User32.RawInputRegistration>()) == 0)
        {
            throw new HostInputException(
                $"Windows does not hand on the input of {description.Path} (error {Marshal.GetLastPInvokeError()}).",
                "Run 'tarry host check' and report what it prints.");
        }
    }
}
