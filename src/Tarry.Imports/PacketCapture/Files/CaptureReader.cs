namespace Tarry.Imports.PacketCapture.Files;

/// <summary>Reads the packets of a capture file front to back. A file that is damaged ends there, with the defect noted.</summary>
/// <remarks>Memory is bounded whatever the file says: one buffer of the longest block, <see cref="LongestBlock"/>.</remarks>
public abstract class CaptureReader
{
    /// <summary>The longest packet or block that is taken for one, in bytes; a longer length is damage.</summary>
    public const int LongestBlock = 1 << 24;

    private protected CaptureReader(ByteWindow window) => Window = window;

    /// <summary>What was found wrong so far.</summary>
    public CaptureDefects Defects { get; } = new();

    /// <summary>How many packets the file holds so far, those that were left out too.</summary>
    public long Packets { get; private protected set; }

    /// <summary>The byte of the file that comes next.</summary>
    public long Offset => Window.Offset;

    /// <summary>Whether times finer than a nanosecond were rounded to it.</summary>
    public bool RoundedToNanoseconds { get; private protected set; }

    private protected ByteWindow Window { get; }

    /// <summary>Opens a capture by its first bytes.</summary>
    /// <param name="stream">The file, from its first byte on; it is left open.</param>
    /// <returns>A reader; null where the bytes are those of no format.</returns>
    public static CaptureReader? Open(Stream stream)
    {
        ArgumentNullException.ThrowIfNull(stream);
        var window = new ByteWindow(stream);
        return CaptureMagic.FormatOf(window.Peek(CaptureMagic.Length)) switch
        {
            CaptureFormat.Pcap => new PcapReader(window),
            CaptureFormat.PcapNg => new PcapNgReader(window),
            CaptureFormat.BtSnoop => new BtSnoopReader(window),
            _ => null,
        };
    }

    /// <summary>Reads the next packet that can be used.</summary>
    /// <returns>False at the end of the file, or of what can be read of it.</returns>
    public abstract bool Read(out CapturedPacket packet);

    /// <summary>The bytes of a header at the current place; false, with the defect noted, where the file ends in it, and without where it ends before.</summary>
    private protected bool Head(int length, string of, out ReadOnlySpan<byte> head)
    {
        head = Window.Peek(length);
        if (head.Length == length)
        {
            return true;
        }

        if (!head.IsEmpty)
        {
            Defects.Add(CaptureDefectKind.CutOff, Offset, $"the file ends after {head.Length} of the {length} bytes of {of}");
        }

        return false;
    }

    /// <summary>A whole record at the current place; false, with the defect noted, where the file ends in it.</summary>
    private protected bool Whole(int length, string of, out ReadOnlySpan<byte> record)
    {
        record = Window.Peek(length);
        if (record.Length < length)
        {
            Defects.Add(CaptureDefectKind.CutOff, Offset, $"the file ends after {record.Length} of the {length} bytes of {of}");
        }

        return record.Length == length;
    }
}
