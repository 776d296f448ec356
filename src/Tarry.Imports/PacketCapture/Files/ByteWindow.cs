namespace Tarry.Imports.PacketCapture.Files;

/// <summary>A stream read front to back through one buffer.</summary>
internal sealed class ByteWindow(Stream stream)
{
    private const int UsualBuffer = 1 << 18;
    private const int LeastBuffer = 1 << 12;
    private byte[] buffer = new byte[stream.CanSeek ? (int)Math.Clamp(stream.Length, LeastBuffer, UsualBuffer) : UsualBuffer];
    private int start;
    private int end;

    /// <summary>The byte of the stream that comes next.</summary>
    public long Offset { get; private set; }

    /// <summary>How many bytes are at hand, after asking for so many: fewer only where the stream ends.</summary>
    public int Available => end - start;

    /// <summary>The next bytes, which stay next; fewer than asked for where the stream ends.</summary>
    public ReadOnlySpan<byte> Peek(int count)
    {
        if (Available < count)
        {
            Fill(count);
        }

        return buffer.AsSpan(start, Math.Min(count, Available));
    }

    /// <summary>Goes past bytes that have been seen.</summary>
    public void Advance(int count)
    {
        start += count;
        Offset += count;
    }

    /// <summary>Goes past bytes, seen or not.</summary>
    /// <returns>Whether they were all there.</returns>
    public bool Skip(long count)
    {
        while (count > 0)
        {
            var step = (int)Math.Min(count, buffer.Length);
            var there = Peek(step).Length;
            Advance(there);
            count -= there;
            if (there < step)
            {
                return false;
            }
        }

        return true;
    }

    private void Fill(int count)
    {
        buffer.AsSpan(start, Available).CopyTo(buffer);
        (start, end) = (0, Available);
        while (end < count)
        {
            // Grows with what the stream holds, never with what a header claims.
            if (end == buffer.Length)
            {
                Array.Resize(ref buffer, Math.Min(count, 2 * buffer.Length));
            }

            var read = stream.Read(buffer.AsSpan(end));
            if (read == 0)
            {
                return;
            }

            end += read;
        }
    }
}
