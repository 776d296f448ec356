using Tarry.Findings.Comparisons;
using Tarry.Findings.Factors;
using Tarry.Findings.Json;
using Tarry.Findings.Tests.Simulation;
using Tarry.Metrology;

namespace Tarry.Findings.Tests.Factors;

public class FactorFindingsTests
{
    [Fact]
    public void Contrasts_AreOfPairsThatDifferInOneFactorAlone()
    {
        var document = Study(
            ("bench", new() { ["device"] = "Bench", ["link"] = "usb" }, null),
            ("pad", new() { ["device"] = "Pad", ["unit"] = "1", ["link"] = "usb", ["placement"] = "0.3 m" }, 500),
            ("pad-overlay", new() { ["device"] = "Pad", ["unit"] = "1", ["link"] = "usb", ["layer"] = "overlay", ["placement"] = "0.3 m" }, 500),
            ("pad-radio", new() { ["device"] = "Pad", ["unit"] = "1", ["link"] = "radio", ["layer"] = "None", ["placement"] = "0.3 m" }, 133),
            ("pad-far", new() { ["device"] = "Pad", ["unit"] = "1", ["link"] = "radio", ["placement"] = "5 m" }, 133),
            ("second", new() { ["device"] = "Pad", ["unit"] = "2", ["link"] = "usb", ["layer"] = "", ["placement"] = "0.3 m" }, 500),
            ("other", new() { ["device"] = "Other", ["unit"] = "9", ["link"] = "usb", ["placement"] = "0.3 m" }, 1000),
            ("unplaced", new() { ["device"] = "Pad", ["unit"] = "1", ["link"] = "usb" }, 500));
        string[] expected =
        [
            "layer: pad-overlay (overlay) - pad (none)",
            "link: pad-radio (radio) - pad (usb)",
            "placement: pad-far (5 m) - pad-radio (0.3 m)",
            "unit: second (2) - pad (1)",
            "device: other (Other) - pad (Pad)",
            "device: other (Other) - second (Pad)",
        ];
        Assert.Equal(expected, document.Factors!.SelectMany(factor => factor.Contrasts)
            .Select(contrast => $"{contrast.Factor}: {contrast.Comparison.A} ({contrast.Level}) - {contrast.Comparison.B} ({contrast.Baseline})"));
        Assert.Equal("0.3 m", document.Factors![0].Contrasts[0].Shared["placement"]);
    }

    [Fact]
    public void Reference_IsACounterpartOnlyWhereItSharesTheDevice()
    {
        var document = Study(
            ("pad", new() { ["device"] = "Pad", ["link"] = "usb" }, 500),
            ("pad-overlay", new() { ["device"] = "Pad", ["link"] = "usb", ["layer"] = "overlay" }, 500),
            ("other", new() { ["device"] = "Other", ["link"] = "usb" }, 500));
        Assert.Equal(["layer"], document.Factors!.Select(factor => factor.Factor));
    }

    [Fact]
    public void ARateThatDiffersAlone_IsAFactor_AndBesideALayerASecondThing()
    {
        var document = Study(
            ("bench", new() { ["device"] = "Bench" }, null),
            ("slow", new() { ["device"] = "Pad" }, 125),
            ("fast", new() { ["device"] = "Pad" }, 1000),
            ("fast-overlay", new() { ["device"] = "Pad", ["layer"] = "overlay" }, 1000));
        Assert.Equal(
            ["layer: fast-overlay - fast", "nominal_report_hz: fast - slow"],
            document.Factors!.SelectMany(factor => factor.Contrasts).Select(contrast => $"{contrast.Factor}: {contrast.Comparison.A} - {contrast.Comparison.B}"));
    }

    /// <summary>A true 1.0 ms is told in every one of ten studies, on one device and on three; what is told is the cost.</summary>
    [Theory]
    [InlineData(1)]
    [InlineData(3)]
    public void ALayerOfAMillisecond_IsTold(int devices) => Assert.All(Enumerable.Range(0, 5), study =>
    {
        var cost = CostOf(SimulatedDesigns.Layer(1, devices, 4, 0.15, trials: 200), 50 + study);
        Assert.Equal(Verdict.Slower, cost.Verdict);
        Assert.InRange(cost.AdjustedP!.Value, 0, 0.05);
        Assert.Equal(devices, cost.Contrasts.Count);
    });

    [Fact]
    public void ALayerThatCostsNothing_IsSaidToWhereTheDataSuffice() => Assert.InRange(
        Enumerable.Range(0, 20).Count(study => CostOf(SimulatedDesigns.Layer(0, 3, 4, 0.1, trials: 200), 100 + study).Verdict == Verdict.NoDifferenceThatMatters),
        18,
        20);

    [Fact]
    public void ALayerThatCostsNothing_IsUndecidedWhereTheyDoNot_AndItIsSaidWhatItTakes()
    {
        var costs = Enumerable.Range(0, 20).Select(study => CostOf(SimulatedDesigns.Layer(0, 1, 2, 0.5, trials: 100), 200 + study)).ToList();
        Assert.InRange(costs.Count(cost => cost.Verdict == Verdict.Undecided), 15, 20);
        Assert.All(costs.Where(cost => cost.Verdict == Verdict.Undecided), cost => Assert.InRange(cost.Needed!.Sittings, 3, 200));
    }

    [Fact]
    public void DevicesThatDiffer_GetNoCommonVerdict_AndTheyAreTheUnit()
    {
        var cost = CostOf(SimulatedDesigns.Layer(1, 3, 4, 0.1, trials: 300, spreadMs: 1.5), 1);
        Assert.True(cost.Agreement!.Differ);
        Assert.Null(cost.Verdict);
        Assert.Null(cost.AdjustedP);
        Assert.Equal(MethodName.CostOverDifferingSettings, ((Estimate<LatencyDifference>)cost.Cost).Method);

        // Student's t on 2 degrees of freedom, 97.5 %: 4.302653 (NIST/SEMATECH e-Handbook of Statistical Methods, 1.3.6.7.2).
        double[] costs = [.. cost.Contrasts.Select(contrast => ((Estimate<LatencyDifference>)contrast.Comparison.Difference).Value.Milliseconds)];
        var mean = costs.Average();
        var half = 4.302653 * Math.Sqrt(costs.Sum(one => (one - mean) * (one - mean)) / 2 / 3);
        Assert.Equal(mean + half, ((Estimate<LatencyDifference>)cost.Cost).Interval.High.Milliseconds, 1e-3);
    }

    [Fact]
    public void CommonCost_IsTheMeanOfTheDevices_AndHoldsTheTruthAtTheStatedRate()
    {
        const int studies = 100;
        var held = 0;
        var agreeing = 0;
        for (var study = 0; study < studies; study++)
        {
            var cost = CostOf(SimulatedDesigns.Layer(0.4, 3, 3, 0.3, trials: 40), 3000 + study);
            var estimate = (Estimate<LatencyDifference>)cost.Cost;
            Assert.Equal(cost.Contrasts.Average(contrast => ((Estimate<LatencyDifference>)contrast.Comparison.Difference).Value.Milliseconds), estimate.Value.Milliseconds, 1e-9);
            if (cost.Agreement!.Differ)
            {
                continue;
            }

            agreeing++;
            held += estimate.Interval.Contains(LatencyDifference.FromMilliseconds(0.4)) ? 1 : 0;
        }

        // Devices that agree are said to differ in 5 % of studies.
        Assert.InRange(agreeing / (double)studies, 0.95 - (3 * Math.Sqrt(0.05 * 0.95 / studies)), 1);
        Assert.InRange(held / (double)agreeing, 0.95 - (3 * Math.Sqrt(0.05 * 0.95 / studies)), 1);
    }

    [Fact]
    public void AdjustedP_IsHolmWithinTheFactorTimesTheFactors()
    {
        var document = SimulatedStudy.Analyse(SimulatedDesigns.Null["12 conditions, 4 sittings"] with { Trials = 60 }, 5);
        var families = document.Factors!;
        Assert.All(families, factor =>
        {
            Assert.Equal(families.Count, factor.Families);
            var contrasts = factor.Contrasts.Select(contrast => contrast.Comparison.AdjustedP!.Value).ToList();
            var studyWide = factor.Contrasts.Select(contrast => document.Comparisons
                .Single(pair => (pair.A, pair.B) == (contrast.Comparison.A, contrast.Comparison.B) || (pair.B, pair.A) == (contrast.Comparison.A, contrast.Comparison.B)).AdjustedP!.Value).ToList();
            Assert.Equal(studyWide.Count, contrasts.Count);
            Assert.All(contrasts.Zip(studyWide), pair => Assert.True(factor.Tests * factor.Families > document.Comparisons.Count || pair.First <= pair.Second + 1e-12));
        });
    }

    [Fact]
    public void Json_OfOneFactor_NamesItsFamily()
    {
        var factor = SimulatedStudy.Analyse(SimulatedDesigns.Layer(1, 2, 3, 0.1, trials: 60), 7).Factors!.Single(one => one.Factor == "layer");
        var json = System.Text.Json.JsonDocument.Parse(FactorsJson.Write(factor)).RootElement;
        Assert.Equal(3, json.GetProperty("family").GetProperty("tests").GetInt32());
        Assert.Equal("overlay", json.GetProperty("costs")[0].GetProperty("level").GetString());
        Assert.Equal(2, json.GetProperty("costs")[0].GetProperty("agreement").GetProperty("settings").GetInt32());
        Assert.Equal("d1-overlay", json.GetProperty("contrasts")[0].GetProperty("a").GetString());
    }

    private static LevelCost CostOf(SimulatedDesign design, int seed) =>
        SimulatedStudy.Analyse(design, (ulong)seed).Factors!.Single(factor => factor.Factor == "layer").Costs.Single();

    private static FindingsDocument Study(params (string Id, Dictionary<string, string> Factors, double? Rate)[] conditions) => SimulatedStudy.Analyse(
        new SimulatedDesign { Conditions = [.. conditions.Select(condition => new SimulatedCondition(condition.Id, condition.Factors) { NominalReportHz = condition.Rate })], Sittings = 2, Trials = 40, KnowsPressTimes = false },
        1);
}
