namespace Tarry.Imports.PacketCapture.Files;

/// <summary>A packet of a capture; its bytes hold until the next is read.</summary>
public readonly ref struct CapturedPacket
{
    /// <summary>The byte of the file at which its block or record begins.</summary>
    public required long Offset { get; init; }

    /// <summary>What its bytes are: a LINKTYPE number, or of btsnoop its datalink number.</summary>
    public required int LinkType { get; init; }

    /// <summary>Whether numbers in it that follow the capturing host's byte order have the most significant byte first.</summary>
    public required bool BigEndian { get; init; }

    /// <summary>When it was captured, in nanoseconds since 1970.</summary>
    public required long TimeNanoseconds { get; init; }

    /// <summary>Which interface of the file; packets of two interfaces belong to different buses or adapters.</summary>
    public required int Interface { get; init; }

    /// <summary>The flags of a btsnoop record; 0 elsewhere.</summary>
    public uint Flags { get; init; }

    /// <summary>How long it was before it was captured.</summary>
    public required long OriginalLength { get; init; }

    /// <summary>Its bytes.</summary>
    public required ReadOnlySpan<byte> Data { get; init; }
}
