using Tarry.Metrology;
using Tarry.Statistics.Alignment;

namespace Tarry.Statistics.Tests.Alignment;

/// <summary>Simulated presses and answers on two clocks, whose relation is known.</summary>
public class AlignmentSearchTests
{
    private const double Offset = 1234.5;

    [Theory]
    [InlineData(40, 0)]
    [InlineData(300, 18)]
    [InlineData(2_000, -120)]
    [InlineData(2_000, 3_000)]
    public void Find_OfAnsweredPresses_GivesRateAndRelativeLatencies(int count, double ppm)
    {
        var generator = new SeededGenerator(11);
        var (presses, latencies, answers) = Recording(generator, count, ppm, 0.08, 0.13);
        var found = AlignmentSearch.Find(presses, answers);
        Assert.Equal(AlignmentKind.Found, found.Kind);
        Assert.Equal(count, found.RelativeSeconds.Count);
        // Five standard errors of a slope through uniform scatter of 8 ms.
        var span = presses[^1] - presses[0];
        var slopeError = 0.008 / Math.Sqrt(12) / (span * Math.Sqrt(count / 12.0)) * 1e6;
        Assert.InRange(found.RatePpm - ppm, -5 * slopeError, 5 * slopeError);
        Assert.InRange(found.RateUncertaintyPpm / slopeError, 0.7, 1.4);

        // Up to a constant, and the tilt by which the rate is off.
        var mean = latencies.Order().ElementAt(count / 2);
        Assert.All(latencies.Zip(found.RelativeSeconds), pair => Assert.InRange(pair.First - mean - pair.Second, -0.003, 0.003));
        Assert.InRange(found.OffsetSeconds - Offset - mean - (ppm / 1e6 * presses[0]), -0.003, 0.003);
    }

    [Fact]
    public void Find_WithMissesLateAnswersAndOtherEvents_StillFindsIt()
    {
        var generator = new SeededGenerator(12);
        var (presses, _, answers) = Recording(generator, 1_000, 40, 0.2, 0.35);
        var kept = answers.Where((_, index) => index % 10 != 3).ToList();
        var late = kept.Select((answer, index) => index % 50 == 7 ? answer + 0.06 : answer);
        // And the stick moves now and then.
        var all = late.Concat(Enumerable.Range(0, 200).Select(_ => Offset + (generator.NextDouble() * 270))).Order().ToList();
        var found = AlignmentSearch.Find(presses, all);
        Assert.Equal(AlignmentKind.Found, found.Kind);
        Assert.InRange(found.RatePpm, 38, 42);
        Assert.InRange(found.RelativeSeconds.Count, 890, 1_000);
    }

    [Fact]
    public void Find_AmongReleasesAfterOneTime_IsRefusedAsAmbiguous()
    {
        var (presses, _, answers) = Recording(new SeededGenerator(16), 500, 10, 0.08, 0.13);
        var withReleases = answers.SelectMany(answer => new[] { answer, answer + 0.05 }).Order().ToList();
        Assert.Equal(AlignmentKind.SeveralMatches, AlignmentSearch.Find(presses, withReleases).Kind);
    }

    [Fact]
    public void Find_OfPressesAtEvenIntervals_IsRefusedAsAmbiguous()
    {
        var generator = new SeededGenerator(13);
        var (presses, _, answers) = Recording(generator, 500, 10, 0.1, 0.1);
        Assert.Equal(AlignmentKind.SeveralMatches, AlignmentSearch.Find(presses, answers).Kind);
    }

    [Fact]
    public void Find_OfAnotherRecording_FindsNoMatch()
    {
        var generator = new SeededGenerator(14);
        var (presses, _, _) = Recording(generator, 500, 10, 0.08, 0.13);
        var (_, _, others) = Recording(generator, 500, 10, 0.08, 0.13);
        Assert.Equal(AlignmentKind.NoMatch, AlignmentSearch.Find(presses, others).Kind);
        Assert.Equal(AlignmentKind.NoMatch, AlignmentSearch.Find(presses, []).Kind);
        Assert.Equal(AlignmentKind.TooFewPresses, AlignmentSearch.Find([.. presses.Take(10)], others).Kind);
    }

    [Fact]
    public void Find_OfManyOtherRecordings_NeverClaimsAMatch()
    {
        for (ulong seed = 0; seed < 40; seed++)
        {
            var generator = SeededGenerator.ForPart(15, seed);
            var (presses, _, _) = Recording(generator, 100, 10, 0.08, 0.13);
            var (_, _, others) = Recording(generator, 500, 10, 0.08, 0.13);
            Assert.NotEqual(AlignmentKind.Found, AlignmentSearch.Find(presses, others).Kind);
        }
    }

    private static (List<double> Presses, List<double> Latencies, List<double> Answers) Recording(SeededGenerator generator, int count, double ppm, double shortest, double longest)
    {
        var (presses, latencies, answers) = (new List<double>(), new List<double>(), new List<double>());
        for (var (index, time) = (0, 3.0); index < count; index++)
        {
            var latency = 0.004 + (0.008 * generator.NextDouble());
            presses.Add(time);
            latencies.Add(latency);
            answers.Add(Offset + (time * (1 + (ppm / 1e6))) + latency);
            time += shortest + ((longest - shortest) * generator.NextDouble());
        }

        return (presses, latencies, answers);
    }
}
