using System.Numerics;

namespace Tarry.Metrology;

/// <summary>A random generator whose sequence for a seed is the same on every machine and in every version of the runtime.</summary>
/// <remarks>
/// xoshiro256** seeded through SplitMix64 (D. Blackman, S. Vigna, "Scrambled linear pseudorandom number generators",
/// ACM Trans. Math. Softw. 47, 2021; public-domain reference code). Not for cryptography.
/// </remarks>
public sealed class SeededGenerator
{
    private ulong s0;
    private ulong s1;
    private ulong s2;
    private ulong s3;

    /// <summary>A generator for a seed.</summary>
    public SeededGenerator(ulong seed)
    {
        s0 = SplitMix(ref seed);
        s1 = SplitMix(ref seed);
        s2 = SplitMix(ref seed);
        s3 = SplitMix(ref seed);
    }

    /// <summary>The next 64 random bits.</summary>
    public ulong NextUInt64()
    {
        var result = BitOperations.RotateLeft(s1 * 5, 7) * 9;
        var t = s1 << 17;
        s2 ^= s0;
        s3 ^= s1;
        s1 ^= s2;
        s0 ^= s3;
        s2 ^= t;
        s3 = BitOperations.RotateLeft(s3, 45);
        return result;
    }

    /// <summary>A uniform number in [0, 1), of 53 bits.</summary>
    public double NextDouble() => (NextUInt64() >> 11) * (1.0 / (1UL << 53));

    /// <summary>A whole number in [0, <paramref name="exclusiveMaximum"/>), without bias.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The maximum is not positive.</exception>
    public int NextInt32(int exclusiveMaximum)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(exclusiveMaximum);
        var limit = (ulong)exclusiveMaximum;
        var threshold = (0UL - limit) % limit;
        while (true)
        {
            var high = Math.BigMul(NextUInt64(), limit, out var low);
            if (low >= threshold)
            {
                return (int)high;
            }
        }
    }

    /// <summary>A standard normal number, by the polar method (G. Marsaglia, T. A. Bray, SIAM Review 6, 1964).</summary>
    public double NextNormal()
    {
        while (true)
        {
            var u = (2 * NextDouble()) - 1;
            var v = (2 * NextDouble()) - 1;
            var s = (u * u) + (v * v);
            if (s is > 0 and < 1)
            {
                return u * Math.Sqrt(-2 * Math.Log(s) / s);
            }
        }
    }

    /// <summary>An independent generator for a numbered part of the work, so that the order of the parts does not matter.</summary>
    public static SeededGenerator ForPart(ulong seed, ulong part)
    {
        var state = seed;
        var mixed = SplitMix(ref state) ^ BitOperations.RotateLeft(part * 0x9E3779B97F4A7C15UL, 31);
        return new SeededGenerator(mixed);
    }

    private static ulong SplitMix(ref ulong state)
    {
        state += 0x9E3779B97F4A7C15UL;
        var z = state;
        z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9UL;
        z = (z ^ (z >> 27)) * 0x94D049BB133111EBUL;
        return z ^ (z >> 31);
    }
}
