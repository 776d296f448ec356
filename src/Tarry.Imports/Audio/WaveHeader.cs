using System.Buffers.Binary;
using Tarry.Imports.Recordings;

namespace Tarry.Imports.Audio;

/// <summary>Reads the chunks of a WAV file up to its samples: RIFF, and RF64 and BW64 with 64-bit sizes.</summary>
/// <remarks>
/// Microsoft, Multimedia Programming Interface and Data Specifications 1.0 (1991), WAVEFORMATEXTENSIBLE (mmreg.h); EBU Tech 3306 for RF64 (from memory).
/// A reader of our own, since an error must name its byte, the file is hashed as it is read, and sizes that a writer left open are common.
/// </remarks>
internal static class WaveHeader
{
    private const int Pcm = 1;
    private const int FloatingPoint = 3;
    private const int Extensible = 0xFFFE;
    private const uint Open = 0xFFFFFFFF;
    private const int MostChannels = 64;

    /// <summary>Reads it; the stream is left at the first frame.</summary>
    /// <exception cref="DamagedRecordingException">This is no WAV file, or none that can be read.</exception>
    public static WaveFormat Read(Stream file)
    {
        Span<byte> head = stackalloc byte[12];
        if (file.ReadAtLeast(head, head.Length, throwOnEndOfStream: false) < head.Length
            || !(head.StartsWith("RIFF"u8) || head.StartsWith("RF64"u8) || head.StartsWith("BW64"u8)) || !head[8..].SequenceEqual("WAVE"u8))
        {
            throw new DamagedRecordingException(0, "A WAV file begins with RIFF or RF64 and the word WAVE; this is something else.");
        }

        WaveFormat? format = null;
        long? longSize = null;
        Span<byte> chunk = stackalloc byte[8];
        while (true)
        {
            var offset = file.Position;
            if (file.ReadAtLeast(chunk, chunk.Length, throwOnEndOfStream: false) < chunk.Length)
            {
                throw new DamagedRecordingException(offset, "The file ends before its samples: there is no data chunk.");
            }

            var size = BinaryPrimitives.ReadUInt32LittleEndian(chunk[4..]);
            if (chunk.StartsWith("data"u8))
            {
                return format is null
                    ? throw new DamagedRecordingException(offset, "The samples come before the fmt chunk that says how they are stored.")
                    : format with { DataOffset = file.Position, DataBytes = size == Open ? longSize : size == 0 ? null : size };
            }

            if (chunk.StartsWith("fmt "u8))
            {
                format = Format(Body(file, offset, size, 16, 4_096), offset);
            }
            else if (chunk.StartsWith("ds64"u8))
            {
                var bytes = BinaryPrimitives.ReadInt64LittleEndian(Body(file, offset, size, 24, 1 << 20).AsSpan(8));
                longSize = bytes > 0 ? bytes : null;
            }
            else
            {
                Skip(file, offset, size + (size & 1L));
            }
        }
    }

    private static byte[] Body(Stream file, long offset, uint size, int least, int most)
    {
        if (size < least || size > most)
        {
            throw new DamagedRecordingException(offset, $"The chunk there says that it has {size} bytes, which it cannot.");
        }

        var body = new byte[size + (size & 1)];
        return file.ReadAtLeast(body, (int)size, throwOnEndOfStream: false) >= size
            ? body
            : throw new DamagedRecordingException(offset, "The file ends within the chunk there.");
    }

    // By reading, so that the hash is of the whole file.
    private static void Skip(Stream file, long offset, long bytes)
    {
        var scratch = new byte[1 << 16];
        while (bytes > 0)
        {
            var read = file.Read(scratch, 0, (int)Math.Min(bytes, scratch.Length));
            if (read == 0)
            {
                throw new DamagedRecordingException(offset, "The file ends within the chunk there.");
            }

            bytes -= read;
        }
    }

    private static WaveFormat Format(byte[] body, long offset)
    {
        var tag = BinaryPrimitives.ReadUInt16LittleEndian(body);
        var channels = BinaryPrimitives.ReadUInt16LittleEndian(body.AsSpan(2));
        var rate = BinaryPrimitives.ReadUInt32LittleEndian(body.AsSpan(4));
        var bits = BinaryPrimitives.ReadUInt16LittleEndian(body.AsSpan(14));
        if (tag == Extensible && body.Length >= 40)
        {
            // The sub-format's first two bytes are the tag that it would have without the extension.
            tag = BinaryPrimitives.ReadUInt16LittleEndian(body.AsSpan(24));
        }

        if (tag is not (Pcm or FloatingPoint))
        {
            throw new DamagedRecordingException(offset, $"The samples are coded (format {tag}); save the recording as PCM or floating point.");
        }

        if (!(tag == Pcm ? bits is 8 or 16 or 24 or 32 : bits is 32 or 64))
        {
            throw new DamagedRecordingException(offset, $"Samples of {bits} bits are not read; there are 8, 16, 24 and 32 for integers, 32 and 64 for floating point.");
        }

        return channels is > 0 and <= MostChannels && rate is >= 8_000 and <= 4_000_000
            ? new WaveFormat(channels, (int)rate, tag == FloatingPoint, bits, 0, null)
            : throw new DamagedRecordingException(offset, $"{channels} channels at {rate} Hz cannot be read; there are up to {MostChannels}, from 8,000 Hz to 4 MHz.");
    }
}
