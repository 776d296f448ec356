using Tarry.Findings.DeviceOnly;
using Tarry.Metrology;

namespace Tarry.Findings.Tests.DeviceOnly;

public sealed class DeviceOnlyFindingTests
{
    [Fact]
    public void Analyse_ReferenceInEverySitting_FindsTheDevice()
    {
        var found = Of(new SyntheticStudy(3) { Trials = 1500, SharedSd = 0.4 }.Add(3, ("ref", 5, 1), ("pad", 7, 8), ("quick", 5.5, 1)), "pad");
        Assert.Null(found.Refusal);
        Assert.Equal(3, found.Sittings.Count);

        // D = 2 + U(0, 8): mean 6, sd 8/sqrt(12).
        var mean = Assert.IsType<Estimate<LatencyDifference>>(found.Mean);
        Assert.True(mean.Interval.Contains(LatencyDifference.FromMilliseconds(6)));
        var deviation = Assert.IsType<Estimate<LatencyDifference>>(found.StandardDeviation);
        Assert.True(deviation.Interval.Contains(LatencyDifference.FromMilliseconds(8 / Math.Sqrt(12))));
        var density = found.Density!;
        Assert.InRange(density.StepMs * density.PerMs.Sum(), 0.9999, 1.0001);
        Assert.InRange(density.PerMs.Select((value, i) => density.StepMs * value * (density.FromMs + (i * density.StepMs))).Sum(), 5.6, 6.4);

        // Most of a block lies inside it, about even.
        double Between(double from, double to) => density.StepMs * density.PerMs.Where((_, i) => density.FromMs + (i * density.StepMs) is var at && at > from && at < to).Sum();
        Assert.InRange(Between(1.5, 10.5), 0.97, 1);
        Assert.InRange(Between(3, 6), 0.30, 0.45);
        Assert.InRange(Between(6, 9), 0.30, 0.45);
    }

    [Fact]
    public void Analyse_Reference_HasNoDeviceAlone() =>
        Assert.Null(new SyntheticStudy(4).Add(2, ("ref", 5, 1), ("pad", 7, 8)).Analyse().Conditions[0].DeviceOnly);

    [Fact]
    public void Analyse_UndeclaredReferenceRate_IsAssumedAndSaid()
    {
        var found = Of(new SyntheticStudy(5).Add(2, ("ref", 5, 1), ("pad", 7, 8)), "pad");
        Assert.Equal(new ReferenceSlot(ReferenceSlot.AssumedMs, ReferenceSlotSource.Assumed), found.ReferenceSlot);
        Assert.Contains("No report rate is declared", DeviceOnlyWording.Assumptions(found)[0], StringComparison.Ordinal);
    }

    [Fact]
    public void Analyse_ReferenceInOtherSittings_KeepsTheMeanAndRefusesTheRest()
    {
        var study = new SyntheticStudy(6);
        foreach (var sitting in new[] { "a", "b" })
        {
            study.AddSession(sitting, "ref", study.Draw(5, 1));
            study.AddSession(sitting + "2", "pad", study.Draw(7, 8));
        }

        var found = Of(study, "pad");
        Assert.Equal(DeviceOnlyRefusalKind.NoSharedSitting, found.Refusal!.Kind);
        Assert.IsType<Estimate<LatencyDifference>>(found.Mean);
        Assert.IsType<NotEnough<LatencyDifference>>(found.StandardDeviation);
        Assert.Null(found.Density);
    }

    [Fact]
    public void Analyse_DriftingReference_IsRefused()
    {
        var study = new SyntheticStudy(7);
        foreach (var sitting in new[] { "a", "b" })
        {
            study.AddSession(sitting, "ref", [.. study.Draw(5, 8).Select((latency, i) => latency + (0.05 * i))]);
            study.AddSession(sitting, "pad", study.Draw(7, 8));
        }

        Assert.Equal(DeviceOnlyRefusalKind.ReferenceCautioned, Of(study, "pad").Refusal!.Kind);
    }

    [Fact]
    public void Analyse_PressesOnALattice_AreRefused()
    {
        var study = new SyntheticStudy(8);
        var random = new SeededGenerator(8);
        double[] even = [.. Enumerable.Range(1, 240).Select(i => i * 100.0)];
        foreach (var sitting in new[] { "a", "b" })
        {
            study.AddSession(sitting, "ref", study.Draw(5, 8), pressTimesMs: [.. even.Select(time => time + (60 * random.NextDouble()))]);
            study.AddSession(sitting, "pad", study.Draw(7, 8), pressTimesMs: even);
        }

        Assert.Equal(DeviceOnlyRefusalKind.ConditionCautioned, Of(study, "pad").Refusal!.Kind);
    }

    [Fact]
    public void Analyse_FewTrials_AreRefusedWithTheirNumber()
    {
        var refusal = Of(new SyntheticStudy(9) { Trials = 150 }.Add(2, ("ref", 5, 1), ("pad", 7, 8)), "pad").Refusal!;
        Assert.Equal(DeviceOnlyRefusalKind.TooFewTrials, refusal.Kind);
        Assert.Contains("300 responses", DeviceOnlyWording.Sentence(refusal), StringComparison.Ordinal);
    }

    [Fact]
    public void Analyse_ConditionSteadierThanTheReference_IsRefused()
    {
        var study = new SyntheticStudy(10);
        foreach (var sitting in new[] { "a", "b" })
        {
            study.AddSession(sitting, "ref", [.. study.Draw(5, 8).Select(latency => latency + 1)]);
            study.AddSession(sitting, "pad", [.. study.Draw(7, 8).Select(latency => 7 + (0.4 * latency))]);
        }

        var found = Of(study, "pad");
        Assert.Equal(DeviceOnlyRefusalKind.SpreadBelowReference, found.Refusal!.Kind);
        Assert.IsType<AtMost<LatencyDifference>>(found.StandardDeviation);
    }

    [Fact]
    public void Analyse_ReferenceSteadierThanItsDeclaredSlot_IsRefusedAltogether()
    {
        var study = new SyntheticStudy(11);
        foreach (var sitting in new[] { "a", "b" })
        {
            // Declared at 125 reports/s, of which the wait alone has an sd of 2.3 ms.
            study.AddSession(sitting, "ref", study.Draw(5, 1));
            study.AddSession(sitting, "pad", study.Draw(7, 8));
        }

        var found = Of(study, "pad");
        Assert.Equal(DeviceOnlyRefusalKind.SlotWaitAboveReference, found.Refusal!.Kind);
        Assert.IsType<NotEnough<LatencyDifference>>(found.Mean);
    }

    [Fact]
    public void Sentence_EveryKind_HasWords() => Assert.All(
        Enum.GetValues<DeviceOnlyRefusalKind>(),
        kind => Assert.NotEmpty(DeviceOnlyWording.Sentence(new DeviceOnlyRefusal(kind, new Dictionary<string, double>()))));

    private static DeviceOnlyFinding Of(SyntheticStudy study, string condition) =>
        study.Analyse().Conditions.Single(found => found.Id == condition).DeviceOnly!;
}
