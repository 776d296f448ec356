using Tarry.Metrology;
using Tarry.Statistics.Shapes;

namespace Tarry.Statistics.Tests.Shapes;

public sealed class ShapeChoiceTests
{
    public static TheoryData<string, ShapeFamily> Truths => new()
    {
        { "normal", ShapeFamily.Normal },
        { "8", ShapeFamily.UniformNormal },
        { "8+4", ShapeFamily.UniformUniformNormal },
        { "4+4", ShapeFamily.UniformUniformNormal },
        { "tail", ShapeFamily.ExponentiallyModifiedNormal },
        { "lumps", ShapeFamily.TwoUniformLumps },
    };

    [Theory]
    [MemberData(nameof(Truths))]
    public void Choice_TwoThousandTrials_FindsTheFamily(string truth, ShapeFamily family)
    {
        var generator = new SeededGenerator(31);
        const int repetitions = 3;
        var right = Enumerable.Range(0, repetitions).Count(_ => ShapeChoice.Of([Session(generator, Shape(truth), 2000)]).Best.Shape.Family == family);
        Assert.Equal(repetitions, right);
    }

    // The families that hold the truth's as a limit lose by no more than the price of their parameters.
    [Fact]
    public void Choice_Normal_NestedFamiliesReachItsLikelihood()
    {
        var choice = ShapeChoice.Of([Session(new SeededGenerator(32), new NormalShape(6, 1.2), 2000)]);
        var normal = choice.Of(ShapeFamily.Normal);
        foreach (var family in new[] { ShapeFamily.UniformNormal, ShapeFamily.UniformUniformNormal, ShapeFamily.ExponentiallyModifiedNormal })
        {
            Assert.True(choice.Of(family).LogLikelihood > normal.LogLikelihood - 0.01, family.ToString());
        }
    }

    // SciPy's optimiser must not find a higher likelihood than we do.
    [Fact]
    public void Fit_ExponentialTail_ReachesWhatSciPyFinds()
    {
        var session = Session(new SeededGenerator(33), new ExponentiallyModifiedNormalShape(6, 0.5, 2), 3000);
        var expected = OutsideProgram.SciPy("k, m, s = stats.exponnorm.fit(x, 4, loc=6, scale=.5); p(m, s, k * s)", session.SortedMs);
        var found = ShapeChoice.Of([session]).Of(ShapeFamily.ExponentiallyModifiedNormal).Shape.Parameters;
        Close.Absolute(expected[0], found[0].Value, 0.02);
        Close.Absolute(expected[1], found[1].Value, 0.02);
        Close.Absolute(expected[2], found[2].Value, 0.03);
    }

    // R 4.2.2, expectation-maximisation run to convergence on faithful$eruptions: share .3484, means 2.0186 and 4.2733, sds .2356 and .4371.
    [Fact]
    public void Fit_Eruptions_AgreesWithExpectationMaximisation()
    {
        var values = PublishedData.Sorted(OutsideProgram.R("p(faithful$eruptions)"));
        var lumps = (TwoLumpShape)ShapeChoice.Of([new SessionLatencies(values, 0)]).Of(ShapeFamily.TwoNormalLumps).Shape;
        Close.Absolute(1 - 0.348404634015, lumps.LaterShare, 0.002);
        Close.Absolute(2.01860781706, lumps.Earlier.Mean, 0.003);
        Close.Absolute(4.27334342119, lumps.Later.Mean, 0.003);
        Close.Absolute(0.235621771457, Math.Sqrt(lumps.Earlier.Variance), 0.003);
        Close.Absolute(0.437063146223, Math.Sqrt(lumps.Later.Variance), 0.003);
    }

    [Fact]
    public void Fit_ShiftedSessions_IsNotWidened()
    {
        var generator = new SeededGenerator(34);
        var shape = new UniformNormalShape(6, 8, 0.3);
        var shifts = new[] { -0.9, -0.2, 0.3, 0.8 };
        var found = ShapeChoice.Of([.. shifts.Select(shift => Session(generator, shape, 1500, shift))]).Of(ShapeFamily.UniformNormal);
        Close.Absolute(8, found.Shape.Parameters[1].Value, 0.1);
        Close.Absolute(0.3, found.Shape.Parameters[2].Value, 0.04);
        for (var j = 0; j < shifts.Length; j++)
        {
            Close.Absolute(shifts[j] - shifts.Average(), found.PlacesMs[j], 0.08);
        }
    }

    [Fact]
    public void Fit_RecordedInWholeMilliseconds_StillFindsTheBlock()
    {
        var generator = new SeededGenerator(35);
        var shape = new UniformNormalShape(6, 8, 0.6);
        var sessions = new[] { 0.0, 0.4, -0.3 }.Select(shift => new SessionLatencies(
            PublishedData.Sorted([.. Enumerable.Range(0, 2000).Select(_ => Math.Round(shape.Draw(generator) + shift))]), 1)).ToArray();
        Close.Absolute(8, ShapeChoice.Of(sessions).Of(ShapeFamily.UniformNormal).Shape.Parameters[1].Value, 0.2);
    }

    [Fact]
    public void Agreement_TrueShape_IsDeniedAsOftenAsStated()
    {
        var generator = new SeededGenerator(36);
        var denied = 0;
        for (var i = 0; i < 30; i++)
        {
            var choice = ShapeChoice.Of([Session(generator, new UniformNormalShape(6, 8, 0.3), 800)]);
            denied += ShapeAgreement.Of(choice, choice.Best)!.P < 0.1 ? 1 : 0;
        }

        Close.Share(0.1, denied, 30);
    }

    [Fact]
    public void Agreement_AnotherShape_IsDenied()
    {
        // A third lump that no family has.
        var generator = new SeededGenerator(37);
        var values = Enumerable.Range(0, 3000).Select(i => (7.0 * (i % 3)) + (0.5 * generator.NextNormal())).ToArray();
        var choice = ShapeChoice.Of([new SessionLatencies(PublishedData.Sorted(values), 0.001)]);
        Assert.True(ShapeAgreement.Of(choice, choice.Best)!.P < 1e-4);
    }

    [Fact]
    public void Choice_NoSession_SaysSo() => Assert.Throws<ArgumentException>(() => ShapeChoice.Of([]));

    internal static SessionLatencies Session(SeededGenerator generator, LatencyShape shape, int trials, double shift = 0) =>
        new(PublishedData.Sorted([.. Enumerable.Range(0, trials).Select(_ => Math.Round(1000 * (shape.Draw(generator) + shift)) / 1000)]), 0.001);

    private static LatencyShape Shape(string name) => name switch
    {
        "normal" => new NormalShape(6, 1.2),
        "8" => new UniformNormalShape(6, 8, 0.3),
        "8+4" => new UniformUniformNormalShape(6, 8, 4, 0.3),
        "4+4" => new UniformUniformNormalShape(6, 4, 4, 0.3),
        "tail" => new ExponentiallyModifiedNormalShape(6, 0.5, 2),
        _ => new TwoLumpShape(new UniformNormalShape(6, 2, 0.3), new UniformNormalShape(11, 2, 0.3), 0.3),
    };
}
