using Tarry.Metrology;
using Tarry.Statistics.Deconvolution;

namespace Tarry.Statistics.Tests.Deconvolution;

/// <summary>Simulations with known truth: fixed 5 ms + frame wait U(0, 4) + noise N(0, 0.3), reference slot 1 ms, 10,000 reference trials.</summary>
public sealed class MeasuredKernelDeconvolutionTests
{
    private static readonly Dictionary<string, Func<SeededGenerator, double>> Delays = new()
    {
        ["block of 8"] = random => 2 + (8 * random.NextDouble()),
        ["block of 1"] = random => 2 + random.NextDouble(),
        ["block of 4, late"] = random => 2 + (4 * random.NextDouble()) + (random.NextDouble() < 0.03 ? 8 : 0) + (random.NextDouble() < 0.01 ? 20 : 0),
        ["radio, retries"] = random => 2 + (1.4 * random.NextDouble()) + (1.4 * Retries(random)),
        ["normal"] = random => 6 + random.NextNormal(),
        ["two lumps"] = random => 2 + (random.NextDouble() < 0.5 ? 0 : 20) + (0.2 * random.NextNormal()),
    };

    // Means of the Wasserstein-1 distances of a prototype in numpy, 5 repetitions. Single runs scatter by a quarter and more about
    // theirs, so two may be 1.6 times that; over 100 repetitions ours are in docs/methods/device-only.md.
    [Theory]
    [InlineData("block of 8", 2000, 0.12)]
    [InlineData("block of 8", 10000, 0.075)]
    [InlineData("block of 1", 2000, 0.057)]
    [InlineData("block of 1", 10000, 0.055)]
    [InlineData("block of 4, late", 2000, 0.12)]
    [InlineData("block of 4, late", 10000, 0.062)]
    [InlineData("radio, retries", 2000, 0.072)]
    [InlineData("radio, retries", 10000, 0.062)]
    [InlineData("normal", 2000, 0.046)]
    [InlineData("normal", 10000, 0.038)]
    [InlineData("two lumps", 2000, 0.3)]
    [InlineData("two lumps", 10000, 0.11)]
    public void Find_KnownTruth_IsAsNearAsThePrototype(string name, int trials, double prototype)
    {
        var random = new SeededGenerator(71);
        var truth = Draw(50_000, () => Delays[name](random));
        var distances = Enumerable.Range(0, 2).Select(_ =>
        {
            var found = Find(random, Delays[name], trials, 0);
            return Wasserstein.Density(found.From, found.Step, found.PerMs, truth);
        });
        Assert.InRange(distances.Average(), 0, 1.6 * prototype);
    }

    [Fact]
    public void Find_ABareShift_IsFurtherOff()
    {
        var random = new SeededGenerator(72);
        var delay = Delays["block of 8"];
        var truth = Draw(50_000, () => delay(random));
        var shifted = Draw(10_000, () => delay(random) + Chain(random) - 7);
        var found = Find(random, delay, 10_000, 0);
        Assert.True(Wasserstein.Samples(shifted, truth) > 2 * Wasserstein.Density(found.From, found.Step, found.PerMs, truth));
    }

    [Fact]
    public void Find_Twice_IsTheSameAndHasMassOneInsideItsBand()
    {
        DeconvolvedDelay Once() => Find(new SeededGenerator(73), Delays["radio, retries"], 1500, 20);
        var (first, second) = (Once(), Once());
        Assert.Equal(first.PerMs, second.PerMs);
        Assert.Equal(first.Low, second.Low);
        Assert.Equal(first.High, second.High);
        Close.Absolute(1, first.Step * first.PerMs.Sum(), 1e-5);
        for (var i = 0; i < first.PerMs.Count; i++)
        {
            Assert.InRange(first.PerMs[i], first.Low[i], first.High[i]);
        }

        Assert.True(first.High.Zip(first.Low).Sum(band => band.First - band.Second) > 0.1);
    }

    [Theory]
    [InlineData(3)]
    [InlineData(-12.4)]
    [InlineData(1000)]
    public void Find_ShiftedByWholeBins_IsShiftedByTheSame(double shift)
    {
        var random = new SeededGenerator(74);
        var latencies = Draw(1000, () => Delays["block of 8"](random) + Chain(random));
        var references = Draw(1000, () => Chain(random) + random.NextDouble());
        var plain = new MeasuredKernelDeconvolution([latencies], [references], 1, 1).Find(0);
        var shifted = new MeasuredKernelDeconvolution([[.. latencies.Select(latency => latency + shift)]], [references], 1, 1).Find(0);
        Close.Absolute(plain.From + shift, shifted.From, 1e-6);
        Close.Absolute(Mean(plain) + shift, Mean(shifted), 0.01);
    }

    [Theory]
    [InlineData(0.125)]
    [InlineData(1)]
    [InlineData(8)]
    [InlineData(16.67)]
    public void Find_AnyReferenceSlot_GivesTheMeanOfMoments(double slot)
    {
        var random = new SeededGenerator(75);
        var latencies = Draw(4000, () => 3 + (2 * random.NextDouble()) + Chain(random));
        var references = Draw(4000, () => Chain(random) + (slot * random.NextDouble()));
        var found = new MeasuredKernelDeconvolution([latencies], [references], slot, 1).Find(0);
        Close.Absolute(latencies.Average() - references.Average() + (slot / 2), Mean(found), 0.04);
    }

    [Fact]
    public void Find_AResponseSecondsLate_IsCountedBeyondTheGridAndHidesNothing()
    {
        var random = new SeededGenerator(76);
        var latencies = Draw(1000, () => 2 + random.NextDouble() + Chain(random));
        latencies[17] = 60_000;
        var references = Draw(1000, () => Chain(random) + random.NextDouble());
        references[3] = 9_000;
        var found = new MeasuredKernelDeconvolution([latencies], [references], 1, 1).Find(2);
        Assert.Equal(0.001, found.BeyondShare);
        Close.Absolute(0.999, found.Step * found.PerMs.Sum(), 1e-5);
        Assert.True(found.PerMs.Count < 300);
    }

    [Fact]
    public void Constructor_SessionsThatDoNotMatch_AreRefused()
    {
        Assert.Throws<ArgumentException>(() => new MeasuredKernelDeconvolution([[1.0], [2.0]], [[1.0]], 1, 1));
        Assert.Throws<ArgumentException>(() => new MeasuredKernelDeconvolution([[]], [[1.0]], 1, 1));
        Assert.Throws<ArgumentOutOfRangeException>(() => new MeasuredKernelDeconvolution([[1.0]], [[1.0]], 0, 1));
    }

    private static DeconvolvedDelay Find(SeededGenerator random, Func<SeededGenerator, double> delay, int trials, int replicates) =>
        new MeasuredKernelDeconvolution(
            [Draw(trials, () => delay(random) + Chain(random))],
            [Draw(10_000, () => Chain(random) + random.NextDouble())],
            1,
            1).Find(replicates);

    private static double Mean(DeconvolvedDelay found) => found.PerMs.Select((density, i) => found.Step * density * (found.From + (i * found.Step))).Sum();

    private static double Chain(SeededGenerator random) => 5 + (4 * random.NextDouble()) + (0.3 * random.NextNormal());

    private static double[] Draw(int count, Func<double> one) => [.. Enumerable.Range(0, count).Select(_ => one())];

    private static int Retries(SeededGenerator random)
    {
        var retries = 0;
        while (random.NextDouble() >= 0.85)
        {
            retries++;
        }

        return retries;
    }
}
