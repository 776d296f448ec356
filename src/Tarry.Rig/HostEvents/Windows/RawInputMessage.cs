using System.Buffers.Binary;

namespace Tarry.Rig.HostEvents.Windows;

/// <summary>From the bytes that <c>GetRawInputData</c> gives to reports. Pure: bytes in, reports out.</summary>
/// <remarks>
/// Layouts of <c>winuser.h</c> as Microsoft's documentation of RAWINPUTHEADER, RAWMOUSE, RAWKEYBOARD and RAWHID states them, little-endian,
/// with the padding of the usual alignment. A header is two 32-bit numbers (kind, size) and two of the width of a pointer (device, wParam).
/// Windows gives no time with them.
/// </remarks>
public static class RawInputMessage
{
    private const uint Mouse = 0;
    private const uint Keyboard = 1;
    private const uint Hid = 2;
    private const int MouseLength = 24;
    private const int KeyboardLength = 16;
    private const int MouseButtons = 5;
    private const ushort KeyUp = 1;
    private const ushort MovesAbsolutely = 1;
    private const ushort WheelTurned = 0x0400;
    private const ushort Wheel = 8;

    /// <summary>The length of a message's header where pointers have this many bytes, 4 or 8.</summary>
    public static int HeaderLength(int pointerSize) => 8 + (2 * pointerSize);

    /// <summary>The device that a message is of; null if it is too short to say.</summary>
    public static long? Device(ReadOnlySpan<byte> message, int pointerSize) =>
        message.Length < HeaderLength(pointerSize) ? null
        : pointerSize == sizeof(long) ? BinaryPrimitives.ReadInt64LittleEndian(message[8..])
        : BinaryPrimitives.ReadInt32LittleEndian(message[8..]);

    /// <summary>Reads a message and hands on what is in it: one report, or as many as a HID message holds.</summary>
    /// <param name="message">Its bytes.</param>
    /// <param name="pointerSize">4 or 8.</param>
    /// <param name="stampNanoseconds">When it arrived.</param>
    /// <param name="onReport">Told of each report.</param>
    /// <returns>False if the message is cut short or of an unknown kind; nothing is handed on then.</returns>
    public static bool Read(ReadOnlySpan<byte> message, int pointerSize, long stampNanoseconds, InputReportHandler onReport)
    {
        ArgumentNullException.ThrowIfNull(onReport);
        var header = HeaderLength(pointerSize);
        if (message.Length < header)
        {
            return false;
        }

        var body = message[header..];
        return BinaryPrimitives.ReadUInt32LittleEndian(message) switch
        {
            Mouse => ReadMouse(body, stampNanoseconds, onReport),
            Keyboard => ReadKeyboard(body, stampNanoseconds, onReport),
            Hid => ReadHid(body, stampNanoseconds, onReport),
            _ => false,
        };
    }

    /// <summary>usFlags at 0, usButtonFlags at 4, usButtonData at 6, lLastX at 12, lLastY at 16.</summary>
    private static bool ReadMouse(ReadOnlySpan<byte> body, long stamp, InputReportHandler onReport)
    {
        if (body.Length < MouseLength)
        {
            return false;
        }

        Span<InputEvent> events = stackalloc InputEvent[MouseButtons + 3];
        var count = 0;
        var flags = BinaryPrimitives.ReadUInt16LittleEndian(body);
        var buttons = BinaryPrimitives.ReadUInt16LittleEndian(body[4..]);
        for (var button = 0; button < MouseButtons; button++)
        {
            // A pair of bits a button: went down, went up. Both may have happened within one message.
            var code = (ushort)(InputCode.MouseLeft + button);
            if ((buttons & (1 << (2 * button))) != 0)
            {
                events[count++] = new InputEvent(InputCode.Key, code, 1);
            }
            else if ((buttons & (2 << (2 * button))) != 0)
            {
                events[count++] = new InputEvent(InputCode.Key, code, 0);
            }
        }

        if ((buttons & WheelTurned) != 0)
        {
            events[count++] = new InputEvent(InputCode.Relative, Wheel, BinaryPrimitives.ReadInt16LittleEndian(body[6..]));
        }

        var type = (flags & MovesAbsolutely) != 0 ? InputCode.Absolute : InputCode.Relative;
        for (ushort axis = 0; axis < 2; axis++)
        {
            var value = BinaryPrimitives.ReadInt32LittleEndian(body[(12 + (4 * axis))..]);
            if (value != 0 || type == InputCode.Absolute)
            {
                events[count++] = new InputEvent(type, axis, value);
            }
        }

        onReport(new InputReport { StampNanoseconds = stamp, Events = events[..count] });
        return true;
    }

    /// <summary>MakeCode at 0, Flags at 2. Up to 0x53 the scan codes of set 1 are the numbers of the Linux input layer; a prefix is put before the rest.</summary>
    private static bool ReadKeyboard(ReadOnlySpan<byte> body, long stamp, InputReportHandler onReport)
    {
        if (body.Length < KeyboardLength)
        {
            return false;
        }

        var flags = BinaryPrimitives.ReadUInt16LittleEndian(body[2..]);
        var prefix = (flags & 6) << 7;
        var code = (ushort)((BinaryPrimitives.ReadUInt16LittleEndian(body) & 0xff) | (prefix == 0 ? 0 : 0x1000 | prefix));
        onReport(new InputReport
        {
            StampNanoseconds = stamp,
            Events = [new InputEvent(InputCode.Key, code, (flags & KeyUp) != 0 ? 0 : 1)],
        });
        return true;
    }

    /// <summary>dwSizeHid at 0, dwCount at 4, then so many reports of that size.</summary>
    private static bool ReadHid(ReadOnlySpan<byte> body, long stamp, InputReportHandler onReport)
    {
        if (body.Length < 8)
        {
            return false;
        }

        var size = BinaryPrimitives.ReadUInt32LittleEndian(body);
        var count = BinaryPrimitives.ReadUInt32LittleEndian(body[4..]);
        if (size == 0 || (ulong)size * count > (ulong)(body.Length - 8))
        {
            return false;
        }

        for (var index = 0; index < (int)count; index++)
        {
            onReport(new InputReport { StampNanoseconds = stamp, Bytes = body.Slice(8 + (index * (int)size), (int)size) });
        }

        return true;
    }
}
