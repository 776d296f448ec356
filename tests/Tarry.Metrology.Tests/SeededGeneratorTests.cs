namespace Tarry.Metrology.Tests;

public sealed class SeededGeneratorTests
{
    // xoshiro256** seeded by four outputs of SplitMix64, from the public-domain C code of D. Blackman and S. Vigna:
    // vectors that several independent ports publish for these seeds.
    [Fact]
    public void NextUInt64_SeedZero_IsTheReferenceSequence() =>
        Assert.Equal(
            [
                0x99ec5f36cb75f2b4, 0xbf6e1f784956452a, 0x1a5f849d4933e6e0, 0x6aa594f1262d2d2c,
                0xbba5ad4a1f842e59, 0xffef8375d9ebcaca, 0x6c160deed2f54c98, 0x8920ad648fc30a3f,
            ],
            Take(0, 8));

    [Fact]
    public void NextUInt64_SeedOne_IsTheReferenceSequence() =>
        Assert.Equal([0xb3f2af6d0fc710c5, 0x853b559647364cea, 0x92f89756082a4514, 0x642e1c7bc266a3a7], Take(1, 4));

    [Fact]
    public void NextUInt64_SeedFortyTwo_IsTheReferenceSequence() =>
        Assert.Equal([0x15780b2e0c2ec716, 0x6104d9866d113a7e, 0xae17533239e499a1], Take(42, 3));

    [Fact]
    public void NextDouble_IsTheTopBitsOfTheWord()
    {
        // 53 bits of the first word of seed 0.
        Assert.Equal((0x99ec5f36cb75f2b4UL >> 11) / 9007199254740992.0, new SeededGenerator(0).NextDouble());
    }

    [Fact]
    public void NextDouble_ManyDraws_StayInRangeWithTheMomentsOfUniform()
    {
        const int draws = 200_000;
        var generator = new SeededGenerator(7);
        var (sum, squares) = (0.0, 0.0);
        for (var i = 0; i < draws; i++)
        {
            var value = generator.NextDouble();
            Assert.InRange(value, 0, 1 - (1 / 9007199254740992.0));
            sum += value;
            squares += value * value;
        }

        // Mean 1/2 with sd sqrt(1/12), mean square 1/3 with sd sqrt(4/45); 5 standard errors.
        Assert.InRange(sum / draws, 0.5 - (5 * Math.Sqrt(1.0 / 12 / draws)), 0.5 + (5 * Math.Sqrt(1.0 / 12 / draws)));
        Assert.InRange(squares / draws, (1.0 / 3) - (5 * Math.Sqrt(4.0 / 45 / draws)), (1.0 / 3) + (5 * Math.Sqrt(4.0 / 45 / draws)));
    }

    [Fact]
    public void NextNormal_ManyDraws_HasTheMomentsOfTheNormal()
    {
        const int draws = 200_000;
        var generator = new SeededGenerator(9);
        var (sum, squares, fourth, beyond) = (0.0, 0.0, 0.0, 0);
        for (var i = 0; i < draws; i++)
        {
            var z = generator.NextNormal();
            sum += z;
            squares += z * z;
            fourth += z * z * z * z;
            beyond += Math.Abs(z) > 1.959963984540054 ? 1 : 0;
        }

        // Standard errors of the moments of a normal: 1, sqrt 2, sqrt 96 over sqrt n; 5 of them.
        Assert.InRange(sum / draws, -5 / Math.Sqrt(draws), 5 / Math.Sqrt(draws));
        Assert.InRange(squares / draws, 1 - (5 * Math.Sqrt(2.0 / draws)), 1 + (5 * Math.Sqrt(2.0 / draws)));
        Assert.InRange(fourth / draws, 3 - (5 * Math.Sqrt(96.0 / draws)), 3 + (5 * Math.Sqrt(96.0 / draws)));
        Assert.InRange(beyond / (double)draws, 0.05 - (5 * Math.Sqrt(0.0475 / draws)), 0.05 + (5 * Math.Sqrt(0.0475 / draws)));
    }

    [Fact]
    public void NextInt32_SmallRange_IsEvenAndInRange()
    {
        var generator = new SeededGenerator(5);
        var counts = new int[7];
        for (var i = 0; i < 70_000; i++)
        {
            counts[generator.NextInt32(7)]++;
        }

        Assert.All(counts, count => Assert.InRange(count, 10_000 - 500, 10_000 + 500));
    }

    [Theory]
    [InlineData(0)]
    [InlineData(-3)]
    public void NextInt32_NoRange_Throws(int maximum) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => new SeededGenerator(1).NextInt32(maximum));

    [Fact]
    public void ForPart_SamePart_RepeatsAndOthersDiffer()
    {
        Assert.Equal(SeededGenerator.ForPart(1, 2).NextUInt64(), SeededGenerator.ForPart(1, 2).NextUInt64());
        var firsts = new HashSet<ulong>();
        for (ulong seed = 0; seed < 20; seed++)
        {
            for (ulong part = 0; part < 200; part++)
            {
                Assert.True(firsts.Add(SeededGenerator.ForPart(seed, part).NextUInt64()), $"seed {seed} part {part} repeats another");
            }
        }
    }

    private static ulong[] Take(ulong seed, int count)
    {
        var generator = new SeededGenerator(seed);
        var values = new ulong[count];
        for (var i = 0; i < count; i++)
        {
            values[i] = generator.NextUInt64();
        }

        return values;
    }
}
