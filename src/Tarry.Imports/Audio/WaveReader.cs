using System.Buffers.Binary;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;
using Tarry.Imports.Recordings;

namespace Tarry.Imports.Audio;

/// <summary>Reads two channels of a WAV file, block by block.</summary>
internal sealed class WaveReader(Stream file, WaveFormat format)
{
    /// <summary>Frames in a block, at most: so many that what is found in it takes far longer than to hand it over.</summary>
    public const int BlockFrames = 65_536;

    // No longer than the file, so that a header that states many channels takes no memory by itself.
    private readonly byte[] bytes = new byte[Math.Min(BlockFrames, (file.Length / format.FrameBytes) + 1) * format.FrameBytes];
    private long left = format.DataBytes ?? long.MaxValue;

    /// <summary>Where and why the samples stopped before the header's size; null if they did not.</summary>
    public RecordingDamage? Damage { get; private set; }

    /// <summary>Samples that were no finite numbers; they are read as 0.</summary>
    public long NotFinite { get; private set; }

    /// <summary>Frames that are read at a time.</summary>
    public int Frames => bytes.Length / format.FrameBytes;

    /// <summary>Reads the next frames of two channels, from 0, into arrays of <see cref="Frames"/>; 0 at the end.</summary>
    public int Read(int first, float[] firstSamples, int second, float[] secondSamples)
    {
        var wanted = (int)Math.Min(left, bytes.Length);
        var read = file.ReadAtLeast(bytes.AsSpan(0, wanted), wanted, throwOnEndOfStream: false);
        left -= read;
        var frames = read / format.FrameBytes;
        if (read < wanted && format.DataBytes is not null)
        {
            Damage = new RecordingDamage(file.Position, FormattableString.Invariant($"The file ends there, {left} bytes before the end that its header states."));
            left = 0;
        }

        Decode(bytes.AsSpan(0, frames * format.FrameBytes), first, firstSamples);
        Decode(bytes.AsSpan(0, frames * format.FrameBytes), second, secondSamples);
        return frames;
    }

    private void Decode(ReadOnlySpan<byte> block, int channel, float[] samples)
    {
        var (step, at, count) = (format.FrameBytes, channel * format.Bits / 8, 0);
        switch (format.Bits, format.IsFloat)
        {
            case (8, _):
                for (; at < block.Length; at += step)
                {
                    samples[count++] = (block[at] - 128) / 128f;
                }

                break;
            case (16, _) when step == 4 && BitConverter.IsLittleEndian:
                Decode16(MemoryMarshal.Cast<byte, int>(block), 16 - (16 * channel), samples);
                break;
            case (16, _):
                for (; at < block.Length; at += step)
                {
                    samples[count++] = BinaryPrimitives.ReadInt16LittleEndian(block[at..]) / 32768f;
                }

                break;
            case (24, _):
                if (at == 0 && !block.IsEmpty)
                {
                    samples[count++] = (block[0] | (block[1] << 8) | ((sbyte)block[2] << 16)) / 8388608f;
                    at += step;
                }

                // One load of four bytes, of which the lowest belongs to the sample before.
                for (; at < block.Length; at += step)
                {
                    samples[count++] = (BinaryPrimitives.ReadInt32LittleEndian(block[(at - 1)..]) >> 8) * (1 / 8388608f);
                }

                break;
            case (32, false):
                for (; at < block.Length; at += step)
                {
                    samples[count++] = BinaryPrimitives.ReadInt32LittleEndian(block[at..]) / 2147483648f;
                }

                break;
            case (32, true):
                for (; at < block.Length; at += step)
                {
                    samples[count++] = Finite(BinaryPrimitives.ReadSingleLittleEndian(block[at..]));
                }

                break;
            default:
                for (; at < block.Length; at += step)
                {
                    samples[count++] = Finite((float)BinaryPrimitives.ReadDoubleLittleEndian(block[at..]));
                }

                break;
        }
    }

    // Two channels: a frame is one number of 32 bits, of which the wanted half is shifted up and down again.
    private static void Decode16(ReadOnlySpan<int> frames, int shift, Span<float> samples)
    {
        while (frames.Length >= Vector256<int>.Count)
        {
            (Vector256.ConvertToSingle(Vector256.Create(frames) << shift >> 16) * (1 / 32768f)).CopyTo(samples);
            frames = frames[Vector256<int>.Count..];
            samples = samples[Vector256<int>.Count..];
        }

        for (var index = 0; index < frames.Length; index++)
        {
            samples[index] = (frames[index] << shift >> 16) / 32768f;
        }
    }

    // A million is 120 dB above full scale: no recording is there, and squares of it stay finite.
    private float Finite(float sample)
    {
        if (Math.Abs(sample) <= 1e6f)
        {
            return sample;
        }

        NotFinite++;
        return 0;
    }
}
