using System.Numerics;
using System.Runtime.Intrinsics;
using Tarry.Imports.Recordings;

namespace Tarry.Imports.ValueChangeDump;

/// <summary>Splits a dump into tokens between white space, whatever the lines, in bounded memory.</summary>
internal sealed class TokenScanner(Stream content)
{
    private const int BufferBytes = 1 << 17;

    /// <summary>A vector of as many bits; no identifier, name or comment word is near it.</summary>
    private const int LongestToken = 1 << 16;

    private readonly byte[] buffer = new byte[BufferBytes];
    private long bufferStart;
    private int at;
    private int end;

    /// <summary>The byte at which the last token begins.</summary>
    public long Offset { get; private set; }

    /// <summary>Whether the last token ends where the file does, without white space behind it.</summary>
    public bool AtEnd => at == end;

    /// <summary>The next token, valid until the one after is asked for; false at the end of the file.</summary>
    /// <remarks>A control character other than white space ends a token and begins the next, where it is damage.</remarks>
    /// <exception cref="DamagedRecordingException">A token is longer than any can be.</exception>
    /// <exception cref="IOException">The file cannot be read.</exception>
    public bool Next(out ReadOnlySpan<byte> token)
    {
        // Nearly every token lies within what is in the buffer; the words of a dump are so short that this is most of the work.
        var bytes = buffer.AsSpan(0, end);
        var first = at;
        while (first < bytes.Length && IsSpace(bytes[first]))
        {
            first++;
        }

        // Sixteen bytes at once find the end of nearly every word, without a guess at its length that the processor would have to take back.
        var behind = first + 1;
        if (bytes.Length - behind >= Vector128<byte>.Count)
        {
            var ends = Vector128.LessThanOrEqual(Vector128.Create<byte>(bytes[behind..]), Vector128.Create((byte)' ')).ExtractMostSignificantBits();
            behind += ends != 0 ? BitOperations.TrailingZeroCount(ends) : Vector128<byte>.Count;
        }

        while (behind < bytes.Length && bytes[behind] > ' ')
        {
            behind++;
        }

        if (behind >= bytes.Length)
        {
            at = first;
            return NextFromFile(out token);
        }

        if (behind - first > LongestToken)
        {
            throw TooLong(first);
        }

        Offset = bufferStart + first;
        token = bytes[first..behind];
        at = behind;
        return true;
    }

    private bool NextFromFile(out ReadOnlySpan<byte> token)
    {
        do
        {
            while (at < end && IsSpace(buffer[at]))
            {
                at++;
            }
        }
        while (at == end && Refill(at));

        var length = 0;
        do
        {
            while (at + length < end && (length == 0 || buffer[at + length] > ' '))
            {
                length++;
            }

            if (length > LongestToken)
            {
                throw TooLong(at);
            }
        }
        while (at + length == end && Refill(at));

        Offset = bufferStart + at;
        token = buffer.AsSpan(at, length);
        at += length;
        return length > 0;
    }

    private DamagedRecordingException TooLong(int from) =>
        new(bufferStart + from, $"A word of more than {LongestToken} bytes stands there; this is no value change dump.");

    private static bool IsSpace(byte character) => character == ' ' || (uint)(character - 9) <= 4;

    /// <summary>Moves what is not used yet to the front and reads behind it.</summary>
    private bool Refill(int from)
    {
        var kept = end - from;
        Buffer.BlockCopy(buffer, from, buffer, 0, kept);
        bufferStart += from;
        at = 0;
        var read = content.Read(buffer, kept, buffer.Length - kept);
        end = kept + read;
        return read > 0;
    }
}
