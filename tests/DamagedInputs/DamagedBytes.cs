using System.Text;
using Tarry.Metrology;

namespace Tarry.DamagedInputs;

/// <summary>Damages a valid input at random: bits and bytes changed, stretches cut out, doubled, and taken from others, lengths overwritten, words of the format where they do not belong; now and then what is of another format, or noise.</summary>
internal static class DamagedBytes
{
    private const int MostChanges = 8;
    private const int LongestNoise = 2_000;
    private static readonly byte[] Interesting = [0, 1, 2, 3, 4, 6, 8, 0x0A, 0x0D, 0x1A, 0x22, 0x2C, 0x40, 0x7F, 0x80, 0xA1, 0xFE, 0xFF];

    /// <summary>A damaged input.</summary>
    /// <param name="valid">Valid inputs of the format.</param>
    /// <param name="words">Words that mean something to its reader; a character is a byte.</param>
    /// <param name="foreign">Inputs of other formats.</param>
    /// <param name="generator">Where chance comes from.</param>
    public static byte[] Of(byte[][] valid, string[] words, byte[][] foreign, SeededGenerator generator)
    {
        switch (generator.NextInt32(64))
        {
            case 0:
                return Noise(generator);
            case 1 when foreign.Length > 0:
                return foreign[generator.NextInt32(foreign.Length)];
        }

        var bytes = new List<byte>(valid[generator.NextInt32(valid.Length)]);
        for (var change = 1 + generator.NextInt32(MostChanges); change > 0 && bytes.Count > 0; change--)
        {
            Change(bytes, valid, words, generator);
        }

        return [.. bytes];
    }

    private static void Change(List<byte> bytes, byte[][] valid, string[] words, SeededGenerator generator)
    {
        var at = generator.NextInt32(bytes.Count);
        switch (generator.NextInt32(words.Length > 0 ? 10 : 8))
        {
            case 0:
                bytes[at] ^= (byte)(1 << generator.NextInt32(8));
                break;
            case 1:
                bytes[at] = Interesting[generator.NextInt32(Interesting.Length)];
                break;
            case 2:
                bytes[at] = (byte)generator.NextInt32(256);
                break;
            case 3:
                bytes.RemoveRange(at, Math.Min(1 + generator.NextInt32(64), bytes.Count - at));
                break;
            case 4:
                bytes.InsertRange(at, bytes.GetRange(at, Math.Min(1 + generator.NextInt32(64), bytes.Count - at)));
                break;
            case 5 when generator.NextInt32(4) == 0:
                bytes.RemoveRange(at, bytes.Count - at);
                break;
            case 6:
                // A length of four bytes, in either order, of any size.
                for (var index = at & ~3; index < Math.Min((at & ~3) + 4, bytes.Count); index++)
                {
                    bytes[index] = generator.NextInt32(2) == 0 ? (byte)0xFF : (byte)generator.NextInt32(256);
                }

                break;
            case 7:
                var other = valid[generator.NextInt32(valid.Length)];
                var from = generator.NextInt32(other.Length);
                bytes.InsertRange(at, other.AsSpan(from, Math.Min(1 + generator.NextInt32(96), other.Length - from)).ToArray());
                break;
            case 8:
                bytes.InsertRange(at, Encoding.Latin1.GetBytes(words[generator.NextInt32(words.Length)]));
                break;
            case 9:
                var word = Encoding.Latin1.GetBytes(words[generator.NextInt32(words.Length)]);
                bytes.RemoveRange(at, Math.Min(word.Length, bytes.Count - at));
                bytes.InsertRange(at, word);
                break;
        }
    }

    private static byte[] Noise(SeededGenerator generator)
    {
        var bytes = new byte[generator.NextInt32(LongestNoise)];
        foreach (ref var value in bytes.AsSpan())
        {
            value = (byte)generator.NextUInt64();
        }

        return bytes;
    }
}
