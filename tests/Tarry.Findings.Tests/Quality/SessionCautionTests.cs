using Tarry.Findings.Quality;
using Tarry.Metrology;
using Tarry.Studies.Sessions;

namespace Tarry.Findings.Tests.Quality;

public class SessionCautionTests
{
    private const int Trials = 1500;

    [Fact]
    public void CleanSessions_AreAccusedInAtMostFivePercentOfStudies()
    {
        const int studies = 200;
        var accused = 0;
        for (var study = 0; study < studies; study++)
        {
            var document = new SyntheticStudy((ulong)(100 + study)) { Trials = 400 }.Add(4, ("ref", 5, 1), ("pad", 6, 8)).Analyse();
            accused += Kinds(document).Any(kind => kind is CautionKind.Drift or CautionKind.ChangePoint or CautionKind.Dependence) ? 1 : 0;
        }

        Assert.InRange(accused / (double)studies, 0, 0.05 + (3 * Math.Sqrt(0.05 * 0.95 / studies)));
    }

    [Fact]
    public void AnOpenSession_IsToldNotToBeFinished()
    {
        var study = new SyntheticStudy(1) { Trials = Trials };
        var condition = study.AddSession("a", "pad", study.Draw(5, 4)).AddSession("b", "pad", study.Draw(5, 4), isSealed: false).Analyse().Conditions[0];
        var caution = Assert.Single(condition.Cautions, caution => caution.Kind == CautionKind.NotFinished);
        Assert.Equal("b.pad", caution.Subject);
        Assert.Contains("1,500 trials count so far", CautionWording.Sentence(caution), StringComparison.Ordinal);
    }

    [Fact]
    public void WarmingUp_IsDrift()
    {
        var study = new SyntheticStudy(1) { Trials = Trials };
        var values = study.Draw(5, 4).Select((value, i) => value + (2 * Math.Exp(-i / 300.0))).ToArray();
        var kinds = Kinds(study.AddSession("a", "pad", values).Analyse());
        Assert.Contains(CautionKind.Drift, kinds);
        Assert.DoesNotContain(CautionKind.ChangePoint, kinds);
    }

    [Fact]
    public void AStepInMidSession_IsAChangePointWhereItIs()
    {
        var study = new SyntheticStudy(2) { Trials = Trials };
        var values = study.Draw(5, 4).Select((value, i) => i >= 600 ? value + 1.5 : value).ToArray();
        var caution = study.AddSession("a", "pad", values).Analyse().Conditions[0].Cautions.Single(caution => caution.Kind == CautionKind.ChangePoint);
        Assert.InRange(caution.Numbers["sequence"], 500, 700);
        Assert.InRange(caution.Numbers["step_ms"], 1.2, 1.8);
    }

    [Fact]
    public void AutoregressiveTrials_AreDependentAndLeaveThePool()
    {
        var study = new SyntheticStudy(3) { Trials = Trials };
        var random = new SeededGenerator(3);
        var previous = 0.0;
        var values = study.Draw(5, 1).Select(value => value + (previous = (0.5 * previous) + random.NextNormal())).ToArray();
        var condition = study.AddSession("a", "pad", values).Analyse().Conditions[0];
        var caution = condition.Cautions.Single(caution => caution.Kind == CautionKind.Dependence);
        Assert.False(condition.Sessions[0].InPool);

        // Effective size of AR(1) with coefficient 0.5 is n (1 - 0.5)/(1 + 0.5) where it is all the variance; here part is white.
        Assert.InRange(caution.Numbers["effective_trials"], Trials / 3.0, Trials * 0.8);
    }

    [Theory]
    [InlineData(7, 7, null)]
    [InlineData(7, 8, 1.0)]
    public void SecondSegment_IsARestartOnlyWhereTheBootChanged(int firstBoot, int secondBoot, double? restarts)
    {
        var study = new SyntheticStudy(5) { Trials = 240 };
        Segment[] live = [new(firstBoot, 1, 1_000_000, null), new(secondBoot, 121, 1_000_000, null)];
        var caution = study.AddSession("a", "pad", study.Draw(5, 4), live: live).Analyse().Conditions[0].Cautions.SingleOrDefault(caution => caution.Kind == CautionKind.RigRebooted);
        Assert.Equal(restarts, caution?.Numbers["restarts"]);
    }

    [Fact]
    public void ARigThatWasNotCalibrated_IsCautionedOnceAStudy_AndAnImportIsNot()
    {
        Segment[] live = [new(7, 1, 1_000_000, null)];
        var study = new SyntheticStudy(5) { Trials = 240 };
        var cautions = study.AddSession("a", "pad", study.Draw(5, 4), live: live).AddSession("b", "pad", study.Draw(5, 4), live: live).AddSession("c", "pad", study.Draw(5, 4)).Analyse().Cautions;
        var caution = Assert.Single(cautions, caution => caution.Kind == CautionKind.RigUncalibrated);
        Assert.Equal((2, 2), (caution.Numbers["uncalibrated_sessions"], caution.Numbers["captured_sessions"]));
        Assert.DoesNotContain(new SyntheticStudy(6).Add(2, ("a", 5, 1)).Analyse().Cautions, caution => caution.Kind == CautionKind.RigUncalibrated);
    }

    [Fact]
    public void ManyMisses_FavourTheLossyLink()
    {
        var study = new SyntheticStudy(4) { Trials = 990 };
        var kinds = Kinds(study.AddSession("a", "pad", study.Draw(5, 8), missed: 10).Analyse());
        Assert.Contains(CautionKind.MissedShare, kinds);
        Assert.Contains(CautionKind.LossFavours, kinds);
    }

    [Theory]
    [InlineData(2, true)]
    [InlineData(50, false)]
    public void PressIntervals_ThatHardlyVary_AreALattice(double rangeMs, bool expected)
    {
        var study = new SyntheticStudy(5) { Trials = 400 };
        var random = new SeededGenerator(5);
        var time = 0.0;
        var presses = Enumerable.Range(0, 400).Select(_ => time += 100 + (rangeMs * random.NextDouble())).ToArray();
        Assert.Equal(expected, Kinds(study.AddSession("a", "pad", study.Draw(5, 8), pressTimesMs: presses).Analyse()).Contains(CautionKind.PressLattice));
    }

    [Fact]
    public void Presses_AtMultiplesOfTheReportInterval_ArePhaseLocked()
    {
        // The synthetic pad states 125 reports/s; presses fall on multiples of 8 ms, give or take 1 ms.
        var study = new SyntheticStudy(6) { Trials = 400 };
        var random = new SeededGenerator(6);
        var slot = 0;
        var presses = Enumerable.Range(0, 400).Select(_ => (8.0 * (slot += 9 + random.NextInt32(8))) + random.NextDouble()).ToArray();
        var caution = study.AddSession("a", "pad", study.Draw(5, 8), pressTimesMs: presses).Analyse()
            .Conditions[0].Cautions.Single(caution => caution.Kind == CautionKind.PhaseLocked);
        Assert.Equal(8, caution.Numbers["period_ms"], 12);
    }

    [Fact]
    public void EveryKind_HasASentenceAndAKeyOfItsOwn()
    {
        var kinds = Enum.GetValues<CautionKind>();
        Assert.All(kinds, kind => Assert.EndsWith(".", CautionWording.Sentence(new Caution(kind, "pad", new Dictionary<string, double>()))));
        Assert.Equal(kinds.Length, kinds.Select(CautionWording.Key).Distinct().Count());
        Assert.Equal("loss-favours", CautionWording.Key(CautionKind.LossFavours));
    }

    private static List<CautionKind> Kinds(FindingsDocument document) =>
        [.. document.Conditions.SelectMany(condition => condition.Cautions).Select(caution => caution.Kind)];

    [Theory]
    [InlineData(CautionKind.RigRebooted, "restarts", 1, "The rig restarted once in pad.")]
    [InlineData(CautionKind.RigRebooted, "restarts", 2, "The rig restarted 2 times in pad.")]
    [InlineData(CautionKind.RefusedRows, "refused", 1, "1 item of pad was refused as bad.")]
    [InlineData(CautionKind.RefusedRows, "refused", 1200, "1,200 items of pad were refused as bad.")]
    [InlineData(CautionKind.LossFavours, "missed_percent", 0.001, "The mean of pad is of the responses that arrived; below 0.01 % did not")]
    public void Sentence_OfACount_IsGrammatical(CautionKind kind, string name, double value, string beginning) =>
        Assert.StartsWith(beginning, CautionWording.Sentence(new Caution(kind, "pad", new Dictionary<string, double> { [name] = value })));
}
