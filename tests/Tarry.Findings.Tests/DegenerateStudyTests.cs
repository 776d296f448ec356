using System.Text.Json;
using Tarry.Findings.Comparisons;
using Tarry.Findings.Json;
using Tarry.Metrology;

namespace Tarry.Findings.Tests;

/// <summary>Data at the edge of what a session can hold: an answer or a typed lack of one, and never a certainty that is not there.</summary>
public class DegenerateStudyTests
{
    private static readonly Func<SeededGenerator, (double[] Latencies, int Missed)>[] Sessions =
    [
        _ => ([], 0),
        _ => ([], 50),
        _ => ([5], 0),
        random => (Noise(random, 2), 1),
        random => (Noise(random, 39), 0),
        random => (Noise(random, 10), 90),
        random => (Noise(random, 120), 0),
        random => ([.. Noise(random, 120).Select(value => Math.Round(value))], 3),
        _ => ([.. Enumerable.Repeat(5.1, 120)], 0),
        _ => ([.. Enumerable.Repeat(7.3, 240)], 0),
        _ => ([.. Enumerable.Range(0, 100).Select(i => 5.0 + (i % 2))], 0),
        _ => ([.. Enumerable.Range(0, 100).Select(i => i < 50 ? 5.0 : 6.0)], 0),
        _ => ([.. Enumerable.Range(0, 120).Select(i => i / 6 * 1e-9)], 0),
        random => ([.. Enumerable.Range(0, 200).Select(_ => Math.Pow(10, (9 * random.NextDouble()) - 3))], 5),
    ];

    [Fact]
    public void AnyMixtureOfPoorSessions_IsAnsweredInOrderedFiniteNumbers()
    {
        for (ulong seed = 0; seed < 120; seed++)
        {
            var random = SeededGenerator.ForPart(9, seed);
            var study = new SyntheticStudy(seed);
            var conditions = 1 + random.NextInt32(5);
            for (var condition = 0; condition < conditions; condition++)
            {
                var sittings = 1 + random.NextInt32(4);
                for (var sitting = 0; sitting < sittings; sitting++)
                {
                    var (latencies, missed) = Sessions[random.NextInt32(Sessions.Length)](random);
                    double[] presses = [.. Enumerable.Range(0, latencies.Length + missed).Select(i => 100.0 * i)];
                    study.AddSession($"s{sitting + random.NextInt32(2) * 4}", $"c{condition}", latencies, missed, presses);
                }
            }

            using var json = JsonDocument.Parse(FindingsJson.Write(study.Analyse()));
            RequireOrder(json.RootElement, seed);
        }
    }

    [Fact]
    public void Differences_ThatAgreeToTheTick_AreNotTold()
    {
        // The same noise in either sitting: the session means differ by 0.1 ms twice, and each is known to about 0.2 ms.
        var noise = Noise(new SeededGenerator(3), 200);
        var other = Noise(new SeededGenerator(4), 200);
        var study = new SyntheticStudy(1);
        foreach (var sitting in new[] { "a", "b" })
        {
            study.AddSession(sitting, "ref", noise).AddSession(sitting, "pad", other);
        }

        var pair = Assert.Single(study.Analyse(marginMs: 0.01).Comparisons);
        Assert.Equal(Verdict.Undecided, pair.Verdict);
        Assert.True(pair.AdjustedP > 0.05, $"p {pair.AdjustedP}");
    }

    [Fact]
    public void Mean_OfSessionsThatAgreeToTheTick_IsNotCertain()
    {
        var noise = Noise(new SeededGenerator(7), 200);
        var mean = Assert.IsType<Estimate<Latency>>(
            Assert.Single(new SyntheticStudy(1).AddSession("a", "pad", noise).AddSession("b", "pad", noise).Analyse().Conditions).Mean);
        Assert.True(mean.Interval.Low < mean.Value && mean.Value < mean.Interval.High, mean.ToString());
    }

    [Fact]
    public void Difference_OfShortSessionsInOneSitting_IsLacking()
    {
        var study = new SyntheticStudy(1).AddSession("a", "ref", [5]).AddSession("a", "pad", Noise(new SeededGenerator(5), 100));
        var lack = Assert.IsType<NotEnough<LatencyDifference>>(Assert.Single(study.Analyse().Comparisons).Difference);
        Assert.Equal((1, 40, "responses"), (lack.Have, lack.Need, lack.Of));
    }

    [Fact]
    public void StandardDeviation_OfOneSessionThatVariesAndOneThatDoesNot_IsLacking()
    {
        var study = new SyntheticStudy(1)
            .AddSession("a", "pad", [.. Enumerable.Repeat(5.0, 150)])
            .AddSession("b", "pad", Noise(new SeededGenerator(6), 150));
        var pad = Assert.Single(study.Analyse().Conditions);
        Assert.Equal(1, Assert.IsType<NotEnough<LatencyDifference>>(pad.StandardDeviation).Have);
        Assert.Equal(1, Assert.IsType<NotEnough<LatencyDifference>>(pad.Spread).Have);
    }

    [Fact]
    public void Needed_OfConditionsThatShareNoSitting_SpeaksOfTheirSessions()
    {
        var study = new SyntheticStudy(2) { Trials = 150, OwnSd = 1 };
        foreach (var (sitting, id) in new[] { ("a", "ref"), ("b", "ref"), ("c", "pad"), ("d", "pad") })
        {
            study.AddSession(sitting, id, study.Draw(5 + study.Draw(0, 1)[0], 1));
        }

        Assert.Equal(150, Assert.Single(study.Analyse(marginMs: 0.5).Comparisons).Needed?.TrialsPerSession);
    }

    private static double[] Noise(SeededGenerator random, int count) =>
        [.. Enumerable.Range(0, count).Select(_ => 6 + (2 * random.NextNormal()))];

    private static void RequireOrder(JsonElement element, ulong seed)
    {
        if (element.ValueKind == JsonValueKind.Array)
        {
            foreach (var item in element.EnumerateArray())
            {
                RequireOrder(item, seed);
            }
        }
        else if (element.ValueKind == JsonValueKind.Object)
        {
            if (element.TryGetProperty("low", out var low))
            {
                var (value, high) = (element.GetProperty("value").GetDouble(), element.GetProperty("high").GetDouble());
                Assert.True(low.GetDouble() <= value && value <= high, $"study {seed}: {element}");
            }

            foreach (var property in element.EnumerateObject())
            {
                RequireOrder(property.Value, seed);
            }
        }
    }
}
