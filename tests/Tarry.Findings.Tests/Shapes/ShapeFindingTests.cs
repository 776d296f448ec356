using System.Text.Json;
using Tarry.Findings.Json;
using Tarry.Findings.Quality;
using Tarry.Findings.Shapes;
using Tarry.Metrology;
using Tarry.Statistics.Shapes;

namespace Tarry.Findings.Tests.Shapes;

public sealed class ShapeFindingTests
{
    [Fact]
    public void Study_ThreeSittings_FindsEachConditionsBlock()
    {
        var study = new SyntheticStudy(5) { WithShapes = true, Trials = 1500 };
        study.Rates["reference"] = 1000;
        study.Rates["slow"] = 125;
        study.Rates["middling"] = 250;
        study.Add(3, ("reference", 5, 1), ("slow", 6, 8), ("middling", 6, 4));
        var document = study.Analyse();
        Assert.Equal(BlockWidthReason.IsTheReference, document.Conditions[0].BlockWidth!.Reason);
        Assert.Equal(8, document.Conditions[1].BlockWidth!.Width!.Value.Milliseconds, 0.3);
        Assert.Equal(4, document.Conditions[2].BlockWidth!.Width!.Value.Milliseconds, 0.3);
        Assert.All(document.Conditions.Skip(1), condition => Assert.True(condition.BlockWidth!.MomentsAgree));
        Assert.Equal(BlockWidthEvidence.ChainFromReference, document.Conditions[1].BlockWidth!.Evidence);
        var slow = Assert.IsType<ShapeFinding>(document.Conditions[1].Shape);
        Assert.Equal(ShapeFamily.UniformUniformNormal, slow.Family);
        Assert.Equal((4500, 3), (slow.Trials, slow.Sessions));
        Assert.Equal(1, slow.Curve.PerMs.Sum() * slow.Curve.StepMs, 0.01);
        Assert.DoesNotContain(document.Conditions.SelectMany(condition => condition.Cautions), caution => caution.Kind is CautionKind.ShapeUnexpected or CautionKind.Modes);
    }

    [Fact]
    public void Study_WiderThanStated_SaysWhatWasExpectedAndFound()
    {
        var study = new SyntheticStudy(6) { WithShapes = true, Trials = 1000 };
        study.Rates["reference"] = 1000;
        study.Rates["claims"] = 250;
        study.Add(2, ("reference", 5, 1), ("claims", 6, 8));
        var caution = Assert.Single(study.Analyse().Conditions[1].Cautions, caution => caution.Kind == CautionKind.ShapeUnexpected);
        var sentence = CautionWording.Sentence(caution);
        Assert.Contains("250 reports a second", sentence, StringComparison.Ordinal);
        Assert.Contains("over 4 ms", sentence, StringComparison.Ordinal);
        Assert.Equal(8, caution.Numbers["found_block_ms"], 0.4);
    }

    [Fact]
    public void Study_LumpsWithAGap_AreCautioned()
    {
        var generator = new SeededGenerator(7);
        var study = new SyntheticStudy(7) { WithShapes = true };
        study.AddSession("s1", "lumpy", Draw(1500, () => (generator.NextDouble() < 0.3 ? 12 : 6) + generator.NextDouble() + (0.3 * generator.NextNormal())));
        study.Rates["lumpy"] = 125;
        var condition = study.Analyse().Conditions[0];
        var modes = Assert.Single(condition.Cautions, caution => caution.Kind == CautionKind.Modes);
        Assert.Equal(6, modes.Numbers["apart_ms"], 0.2);
        Assert.Equal(30, modes.Numbers["later_percent"], 5.0);
        Assert.Contains("two lumps instead", CautionWording.Sentence(Assert.Single(condition.Cautions, caution => caution.Kind == CautionKind.ShapeUnexpected)), StringComparison.Ordinal);
    }

    [Fact]
    public void Study_NormalWhereABlockIsStated_IsCautioned()
    {
        var generator = new SeededGenerator(8);
        var study = new SyntheticStudy(8) { WithShapes = true };
        study.AddSession("s1", "round", Draw(3000, () => 12 + (2.6 * generator.NextNormal())));
        study.Rates["round"] = 125;
        var caution = Assert.Single(study.Analyse().Conditions[0].Cautions, caution => caution.Kind == CautionKind.ShapeUnexpected);
        Assert.Contains("normal curve", CautionWording.Sentence(caution), StringComparison.Ordinal);
    }

    [Fact]
    public void Study_Retransmissions_BunchAtMultiples()
    {
        var generator = new SeededGenerator(9);
        var study = new SyntheticStudy(9) { WithShapes = true };
        study.AddSession("s1", "lossy", Draw(4000, () => 6 + (2 * generator.NextDouble()) + (0.3 * generator.NextNormal()) + (7.5 * Retries(generator))));
        var tail = study.Analyse().Conditions[0].LateTail!;
        Assert.Equal(7.5, tail.LumpInterval!.Value.Milliseconds, 0.15);
        Assert.Equal(0.048, tail.Lumps[0].Share.Value.Value, 0.012);
        Assert.True(tail.Lumps[0].Share.Interval.Contains(tail.Lumps[0].Share.Value));
        Assert.IsType<Estimate<Latency>>(tail.P999);
    }

    [Fact]
    public void Study_FewTrials_SaysHowMany()
    {
        var study = new SyntheticStudy(10) { WithShapes = true, Trials = 60 };
        study.Add(2, ("reference", 5, 1), ("other", 6, 8));
        var condition = study.Analyse().Conditions[1];
        Assert.Equal(120, Assert.IsType<ShapeNotEnough>(condition.Shape).Have);
        Assert.Equal(BlockWidthReason.TooFewTrials, condition.BlockWidth!.Reason);
        Assert.Equal(3688, Assert.IsType<NotEnough<Latency>>(condition.LateTail!.P999).Need);
    }

    [Fact]
    public void Json_Shape_HasTheKeysOfTheSchema()
    {
        var study = new SyntheticStudy(11) { WithShapes = true, Trials = 300 };
        study.Add(1, ("reference", 5, 1), ("other", 6, 8));
        using var json = JsonDocument.Parse(FindingsJson.Write(study.Analyse()));
        var condition = json.RootElement.GetProperty("conditions")[1];
        Assert.True(condition.GetProperty("shape").GetProperty("parameters").TryGetProperty("fixed_ms", out _));
        Assert.Equal("chain-from-reference-of-unstated-rate", condition.GetProperty("block_width_ms").GetProperty("evidence").GetString());
        Assert.Equal(JsonValueKind.Object, condition.GetProperty("late_tail").GetProperty("share_by_fit").ValueKind);
    }

    private static int Retries(SeededGenerator generator)
    {
        var retries = 0;
        while (generator.NextDouble() < 0.05)
        {
            retries++;
        }

        return retries;
    }

    private static double[] Draw(int trials, Func<double> latency) => [.. Enumerable.Range(0, trials).Select(_ => latency())];
}
