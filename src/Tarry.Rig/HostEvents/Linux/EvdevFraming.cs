using System.Buffers.Binary;
using System.Runtime.InteropServices;

namespace Tarry.Rig.HostEvents.Linux;

/// <summary>From the bytes of an evdev device to its reports. Pure: bytes in, reports out, however they are cut.</summary>
/// <remarks>
/// An event is <c>struct input_event</c> of <c>linux/input.h</c>: seconds, microseconds, type, code, value; 24 bytes where times have 64 bits, 16
/// where they have 32. SYN_REPORT ends a report, and its stamp is the report's. After SYN_DROPPED everything up to and including the
/// next SYN_REPORT is dropped, and the state is read again (Linux, Documentation/input/event-codes.rst).
/// </remarks>
/// <param name="eventSize">24 or 16.</param>
/// <param name="readState">Adds the device's present state, one event a button and axis.</param>
public sealed class EvdevFraming(int eventSize, Action<List<InputEvent>> readState)
{
    private readonly List<InputEvent> events = [];
    private readonly byte[] rest = new byte[eventSize is 24 or 16 ? eventSize : throw new ArgumentOutOfRangeException(nameof(eventSize), eventSize, "An event has 24 bytes, or 16.")];
    private int restLength;
    private bool losing;

    // The first report of a run may be a press that is timed: it must not wait for the compiler.
    static EvdevFraming()
    {
        var rehearsal = new byte[2 * 24];
        rehearsal[16] = (byte)InputCode.Key;
        new EvdevFraming(24, _ => { }).Push(rehearsal, _ => { });
    }

    /// <summary>The size of an event on this machine.</summary>
    public static int NativeEventSize => nint.Size == sizeof(long) ? 24 : 16;

    /// <summary>How often the kernel said that it had dropped events.</summary>
    public long Losses { get; private set; }

    /// <summary>Takes bytes as they were read.</summary>
    public void Push(ReadOnlySpan<byte> bytes, InputReportHandler onReport)
    {
        ArgumentNullException.ThrowIfNull(onReport);
        if (restLength > 0)
        {
            var taken = Math.Min(eventSize - restLength, bytes.Length);
            bytes[..taken].CopyTo(rest.AsSpan(restLength));
            restLength += taken;
            bytes = bytes[taken..];
            if (restLength < eventSize)
            {
                return;
            }

            restLength = 0;
            Take(rest, onReport);
        }

        for (; bytes.Length >= eventSize; bytes = bytes[eventSize..])
        {
            Take(bytes[..eventSize], onReport);
        }

        bytes.CopyTo(rest);
        restLength = bytes.Length;
    }

    private void Take(ReadOnlySpan<byte> bytes, InputReportHandler onReport)
    {
        var fields = bytes[^8..];
        var found = new InputEvent(
            BinaryPrimitives.ReadUInt16LittleEndian(fields),
            BinaryPrimitives.ReadUInt16LittleEndian(fields[2..]),
            BinaryPrimitives.ReadInt32LittleEndian(fields[4..]));
        if (found is { Type: InputCode.Synchronisation, Code: InputCode.Dropped })
        {
            Losses++;
            losing = true;
        }
        else if (found is { Type: InputCode.Synchronisation, Code: InputCode.Report })
        {
            Finish(Stamp(bytes), onReport);
        }
        else if (found.Type != InputCode.Synchronisation && !losing)
        {
            events.Add(found);
        }
    }

    private void Finish(long stamp, InputReportHandler onReport)
    {
        if (losing)
        {
            events.Clear();
            readState(events);
        }

        var follows = losing;
        losing = false;
        onReport(new InputReport { StampNanoseconds = stamp, Events = CollectionsMarshal.AsSpan(events), FollowsALoss = follows });
        events.Clear();
    }

    // A stamp that no clock gives wraps, as the kernel's own arithmetic would.
    private long Stamp(ReadOnlySpan<byte> bytes) => unchecked(eventSize == 24
        ? (BinaryPrimitives.ReadInt64LittleEndian(bytes) * 1_000_000_000) + (BinaryPrimitives.ReadInt64LittleEndian(bytes[8..]) * 1000)
        : (BinaryPrimitives.ReadUInt32LittleEndian(bytes) * 1_000_000_000L) + (BinaryPrimitives.ReadUInt32LittleEndian(bytes[4..]) * 1000L));
}
