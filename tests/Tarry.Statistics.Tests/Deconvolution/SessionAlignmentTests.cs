using Tarry.Metrology;
using Tarry.Statistics.Deconvolution;
using Tarry.Statistics.Descriptives;

namespace Tarry.Statistics.Tests.Deconvolution;

public sealed class SessionAlignmentTests
{
    [Fact]
    public void Align_ShiftsOfSittings_AreTakenOutOfBoth()
    {
        var random = new SeededGenerator(81);
        double[] shifts = [0, 0.7, -1.1];
        var references = shifts.Select(shift => Draw(random, 4 + shift, 500)).ToList();
        var latencies = shifts.Select(shift => Draw(random, 9 + shift, 500)).ToList();
        var (aligned, alignedReferences) = SessionAlignment.Align(latencies, references);
        Assert.All(alignedReferences, session => Close.Absolute(references.Average(one => one.Average()), session.Average(), 1e-9));

        // Each mean of 500 has an error of 0.045.
        Assert.All(aligned, session => Close.Absolute(aligned.Average(one => one.Average()), session.Average(), 0.25));
        Close.Absolute(Difference(latencies, references), Difference(aligned, alignedReferences), 1e-9);
    }

    [Fact]
    public void Align_OwnShifts_AreTakenOutAsFarAsTheyAreMoreThanChance()
    {
        var random = new SeededGenerator(82);
        double[] own = [0, 2, -3, 1];
        var references = own.Select(_ => Draw(random, 4, 500)).ToList();
        var latencies = own.Select(shift => Draw(random, 9 + shift, 500)).ToList();
        var (aligned, _) = SessionAlignment.Align(latencies, references);
        var means = aligned.Select(session => session.Average()).ToArray();
        Assert.InRange(Moments.StandardDeviation(means), 0, 0.1);
    }

    [Fact]
    public void Align_OneSession_MovesNothing()
    {
        double[] latencies = [1, 2, 4];
        double[] references = [0.5, 0.75];
        var (aligned, alignedReferences) = SessionAlignment.Align([latencies], [references]);
        Assert.Equal(latencies, aligned[0]);
        Assert.Equal(references, alignedReferences[0]);
    }

    private static double Difference(IReadOnlyList<double[]> latencies, IReadOnlyList<double[]> references) =>
        latencies.Zip(references).Average(pair => pair.First.Average() - pair.Second.Average());

    private static double[] Draw(SeededGenerator random, double mean, int count) => [.. Enumerable.Range(0, count).Select(_ => mean + random.NextNormal())];
}
