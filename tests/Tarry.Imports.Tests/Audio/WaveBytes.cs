using System.Buffers.Binary;

namespace Tarry.Imports.Tests.Audio;

/// <summary>Makes WAV files by the published layout.</summary>
internal static class WaveBytes
{
    public static byte[] Float(int sampleRate, params float[][] channels) =>
        Of(sampleRate, 3, 32, channels, (bytes, sample) => BinaryPrimitives.WriteSingleLittleEndian(bytes, sample));

    public static byte[] Of(int sampleRate, int tag, int bits, float[][] channels, Action<Span<byte>, float> write)
    {
        var (frames, size) = (channels[0].Length, bits / 8);
        var data = new byte[frames * channels.Length * size];
        for (var frame = 0; frame < frames; frame++)
        {
            for (var channel = 0; channel < channels.Length; channel++)
            {
                write(data.AsSpan(((frame * channels.Length) + channel) * size, size), channels[channel][frame]);
            }
        }

        return [.. Header(sampleRate, tag, bits, channels.Length, (uint)data.Length), .. data];
    }

    public static byte[] Header(int sampleRate, int tag, int bits, int channels, uint dataBytes)
    {
        var header = new byte[44];
        "RIFF"u8.CopyTo(header);
        BinaryPrimitives.WriteUInt32LittleEndian(header.AsSpan(4), dataBytes == uint.MaxValue ? dataBytes : dataBytes + 36);
        "WAVEfmt "u8.CopyTo(header.AsSpan(8));
        BinaryPrimitives.WriteUInt32LittleEndian(header.AsSpan(16), 16);
        BinaryPrimitives.WriteUInt16LittleEndian(header.AsSpan(20), (ushort)tag);
        BinaryPrimitives.WriteUInt16LittleEndian(header.AsSpan(22), (ushort)channels);
        BinaryPrimitives.WriteUInt32LittleEndian(header.AsSpan(24), (uint)sampleRate);
        BinaryPrimitives.WriteUInt32LittleEndian(header.AsSpan(28), (uint)(sampleRate * channels * bits / 8));
        BinaryPrimitives.WriteUInt16LittleEndian(header.AsSpan(32), (ushort)(channels * bits / 8));
        BinaryPrimitives.WriteUInt16LittleEndian(header.AsSpan(34), (ushort)bits);
        "data"u8.CopyTo(header.AsSpan(36));
        BinaryPrimitives.WriteUInt32LittleEndian(header.AsSpan(40), dataBytes);
        return header;
    }
}
