using Tarry.Findings.Comparisons;
using Tarry.Findings.Contrasts;
using Tarry.Findings.Quality;
using Tarry.Metrology;

namespace Tarry.Findings.Tests.Contrasts;

/// <summary>A retest against a first test, with known truth; rates over many seeds, tolerance three standard errors of the binomial.</summary>
public class LinkedContrastTests
{
    private const int Studies = 200;

    private static double ThreeErrors(double share) => 3 * Math.Sqrt(share * (1 - share) / Studies);

    [Theory]
    [InlineData(0.0)]
    [InlineData(-0.8)]
    public void Difference_OverManyRetests_HoldsTheTruthAtTheStatedRate(double changeMs)
    {
        var (held, told, detectable) = (0, 0, 0.0);
        for (var study = 0; study < Studies; study++)
        {
            var contrast = Retest((ulong)study, changeMs);
            held += Estimate(contrast).Interval.Contains(LatencyDifference.FromMilliseconds(changeMs)) ? 1 : 0;
            told += contrast.Comparison.AdjustedP < 0.05 ? 1 : 0;
            detectable += contrast.Comparison.MinimumDetectable!.Value.Milliseconds;
        }

        Assert.InRange(held / (double)Studies, 0.95 - ThreeErrors(0.95), 0.995);
        if (changeMs == 0)
        {
            Assert.InRange(told / (double)Studies, 0, 0.05 + ThreeErrors(0.05));
        }
        else
        {
            // 80 % power at the minimum detectable difference, and the change is beyond it.
            Assert.InRange(detectable / Studies, 0, -changeMs);
            Assert.InRange(told / (double)Studies, 0.8, 1);
        }
    }

    [Fact]
    public void Retest_InWhichOnlyTheFirmwareDiffersAndLatencyChanged_TellsTheChange()
    {
        var contrast = Retest(11, -0.8, b: Firmware("1.7"), a: Firmware("1.8"));
        Assert.Equal(Verdict.Faster, contrast.Comparison.Verdict);
        Assert.Equal([new FactorDifference("device_firmware", "1.8", "1.7")], contrast.FactorDifferences);
        Assert.True(Estimate(contrast).Interval.High.Milliseconds < 0);
        Assert.DoesNotContain(CautionKind.SeveralFactors, contrast.Cautions.Select(caution => caution.Kind));
    }

    [Fact]
    public void Retest_OnABenchThatIsThreeMillisecondsLater_TellsNoChangeButThatTheReferenceMoved()
    {
        var contrast = Retest(12, 0, benchMs: 3);
        Assert.Equal(Verdict.NoDifferenceThatMatters, contrast.Comparison.Verdict);
        Assert.InRange(Assert.IsType<Estimate<LatencyDifference>>(contrast.ReferenceChange).Value.Milliseconds, 2.5, 3.5);
        Assert.Contains(CautionKind.ReferenceMoved, contrast.Cautions.Select(caution => caution.Kind));
    }

    [Theory]
    [InlineData("unit", "B")]
    [InlineData("device_firmware", "0.2")]
    [InlineData("layer", "overlay")]
    public void Retest_InWhichTheReferenceIsAnother_IsRefused(string factor, string level)
    {
        var (first, second) = (Study(13, 5, 7, 0), Study(14, 6, 7, 0));
        var refusal = Assert.Throws<ContrastException>(() => LinkedContrast.Of(With(second, "ref", factor, level), "pad", first, "pad"));
        Assert.Contains(factor, refusal.Message);
        Assert.NotEmpty(refusal.Remedy);
    }

    [Fact]
    public void Retest_OfAReferenceThatIsNotStated_IsCautioned()
    {
        var first = Study(15, 5, 7, 0);
        var unstated = first with { Conditions = [.. first.Conditions.Select(condition => condition with { Factors = new Dictionary<string, string> { ["link"] = "usb" } })] };
        Assert.Contains(CautionKind.ReferenceUnstated, LinkedContrast.Of(Study(16, 5, 7, 0), "pad", unstated, "pad").Cautions.Select(caution => caution.Kind));
    }

    [Fact]
    public void Retest_InWhichTwoFactorsDiffer_IsCautioned()
    {
        var first = Study(17, 5, 7, 0);
        var second = With(With(Study(18, 5, 7, 0), "pad", "device_firmware", "1.8"), "pad", "placement", "3 m");
        var caution = Assert.Single(LinkedContrast.Of(second, "pad", first, "pad").Cautions, caution => caution.Kind == CautionKind.SeveralFactors);
        Assert.Equal(2, caution.Numbers["factors"]);
    }

    [Fact]
    public void Retest_OfOneSitting_IsUndecidedAndSaysWhatItLacks()
    {
        var once = new SyntheticStudy(19).Add(1, ("ref", 5, 1), ("pad", 7, 1), ("air", 9, 1)).Analyse();
        var contrast = LinkedContrast.Of(once, "pad", Study(20, 5, 7, 0), "pad");
        Assert.Equal(Verdict.Undecided, contrast.Comparison.Verdict);
        Assert.Equal(1, Assert.IsType<NotEnough<LatencyDifference>>(contrast.Comparison.Difference).Have);
    }

    [Fact]
    public void Of_WhatCannotBeCompared_SaysWhatToGive()
    {
        var study = Study(21, 5, 7, 0);
        Assert.Contains("pad", Assert.Throws<ContrastException>(() => LinkedContrast.Of(study, "none", study, "pad")).Remedy);
        Assert.Contains("other than the reference", Assert.Throws<ContrastException>(() => LinkedContrast.Of(study, "ref", study, "pad")).Remedy);
        Assert.Contains("reference", Assert.Throws<ContrastException>(() => LinkedContrast.Of(study with { Reference = null }, "pad", study, "pad")).Message);
        Assert.Throws<ContrastException>(() => WithinStudyContrast.Of(study, "pad", "pad"));
    }

    [Fact]
    public void WithinStudy_EitherWayRound_SaysTheSame()
    {
        var study = Study(22, 5, 7, 0);
        var (one, other) = (WithinStudyContrast.Of(study, "pad", "ref"), WithinStudyContrast.Of(study, "ref", "pad"));
        Assert.Equal((Verdict.Slower, Verdict.Faster), (one.Comparison.Verdict, other.Comparison.Verdict));
        Assert.Equal(Estimate(one).Value.Milliseconds, -Estimate(other).Value.Milliseconds, 12);
        Assert.Equal(Estimate(one).Interval.Low.Milliseconds, -Estimate(other).Interval.High.Milliseconds, 12);
        Assert.Equal(one.Comparison.AdjustedP, other.Comparison.AdjustedP);
    }

    private static Estimate<LatencyDifference> Estimate(ContrastFinding contrast) =>
        Assert.IsType<Estimate<LatencyDifference>>(contrast.Comparison.Difference);

    private static Dictionary<string, string> Firmware(string version) => new() { ["device_firmware"] = version };

    private static ContrastFinding Retest(
        ulong seed, double changeMs, double benchMs = 0, Dictionary<string, string>? a = null, Dictionary<string, string>? b = null)
    {
        var first = Study((2 * seed) + 1, 5, 7, 0);
        var second = Study((2 * seed) + 2, 5, 7 + changeMs, benchMs);
        return LinkedContrast.Of(With(second, "pad", a), "pad", With(first, "pad", b), "pad");
    }

    private static FindingsDocument Study(ulong seed, double referenceMs, double padMs, double benchMs)
    {
        var study = new SyntheticStudy(seed) { Trials = 60 }
            .Add(3, ("ref", referenceMs + benchMs, 1), ("pad", padMs + benchMs, 1), ("air", 9 + benchMs, 1), ("stick", 8 + benchMs, 1))
            .Analyse(marginMs: 0.6);
        return study with
        {
            Title = $"test {seed}",
            Conditions = [.. study.Conditions.Select(condition => condition with
            {
                Factors = new Dictionary<string, string>
                {
                    ["device"] = condition.Id == "ref" ? "Bench board" : "Quill 2",
                    ["unit"] = condition.Id == "ref" ? "A" : "0041",
                    ["device_firmware"] = condition.Id == "ref" ? "0.1" : "1.7",
                    ["link"] = "usb",
                    ["layer"] = "none",
                },
            })],
        };
    }

    private static FindingsDocument With(FindingsDocument study, string id, string factor, string level) =>
        With(study, id, new Dictionary<string, string> { [factor] = level });

    private static FindingsDocument With(FindingsDocument study, string id, Dictionary<string, string>? levels) => levels is null ? study : study with
    {
        Conditions = [.. study.Conditions.Select(condition => condition.Id != id ? condition : condition with
        {
            Factors = condition.Factors.Where(factor => !levels.ContainsKey(factor.Key)).Concat(levels).ToDictionary(factor => factor.Key, factor => factor.Value),
        })],
    };
}
