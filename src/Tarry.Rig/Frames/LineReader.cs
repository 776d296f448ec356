namespace Tarry.Rig.Frames;

/// <summary>Cuts a byte stream into lines, in bounded memory however long a line gets.</summary>
internal sealed class LineReader
{
    /// <summary>The most bytes that a frame may have before its line feed.</summary>
    public const int MaximumLength = 80;

    private const byte LineFeed = 0x0a;
    private readonly byte[] line = new byte[MaximumLength];
    private long length;

    /// <summary>Takes bytes in; gives every finished line that is not empty: its first 80 bytes, and its whole length.</summary>
    public void Push(ReadOnlySpan<byte> bytes, Action<ReadOnlyMemory<byte>, long> onLine)
    {
        while (true)
        {
            var end = bytes.IndexOf(LineFeed);
            var part = end < 0 ? bytes : bytes[..end];
            if (length < MaximumLength)
            {
                var kept = part[..(int)Math.Min(part.Length, MaximumLength - length)];
                kept.CopyTo(line.AsSpan((int)length));
            }

            length += part.Length;
            if (end < 0)
            {
                return;
            }

            if (length > 0)
            {
                onLine(line.AsSpan(0, (int)Math.Min(length, MaximumLength)).ToArray(), length);
            }

            length = 0;
            bytes = bytes[(end + 1)..];
        }
    }
}
