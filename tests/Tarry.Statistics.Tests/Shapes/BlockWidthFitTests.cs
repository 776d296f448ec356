using Tarry.Metrology;
using Tarry.Statistics.Shapes;

namespace Tarry.Statistics.Tests.Shapes;

public sealed class BlockWidthFitTests
{
    // 250, 125 and 100 reports a second make blocks of 4, 8 and 10 ms (common practice, no published source).
    [Theory]
    [InlineData(250)]
    [InlineData(125)]
    [InlineData(100)]
    public void Through_UsualRates_FindsTheirBlocks(double reportHz)
    {
        var generator = new SeededGenerator(41);
        var reference = Condition(generator, 1, 6000);
        var fit = BlockWidthFit.Through(Condition(generator, 1000 / reportHz, 5000), reference, 1);
        Close.Absolute(1000 / reportHz, fit.WidthMs, 0.25);
        Assert.True(fit.Limits.High - fit.Limits.Low < 0.6, $"{fit.Limits}");
        Close.Absolute(4.1, fit.FrameWaitMs, 0.15);
    }

    [Fact]
    public void Through_FourMilliseconds_IntervalHoldsTheTruth()
    {
        var generator = new SeededGenerator(42);
        var reference = Condition(generator, 1, 6000);
        const int repetitions = 10;
        var inside = 0;
        for (var i = 0; i < repetitions; i++)
        {
            var limits = BlockWidthFit.Through(Condition(generator, 4, 1000), reference, 1).Limits;
            inside += limits.Low <= 4 && limits.High >= 4 ? 1 : 0;
        }

        Assert.True(inside >= 7, $"{inside} of {repetitions}");
    }

    [Fact]
    public void Through_AnEighthOfAMillisecond_GivesALimitOnly()
    {
        var generator = new SeededGenerator(43);
        var fit = BlockWidthFit.Through(Condition(generator, 0.125, 2000), Condition(generator, 1, 6000), 1);
        Assert.Equal(0, fit.Limits.Low);
        Assert.InRange(fit.Limits.High, 0.125, 1);
    }

    [Fact]
    public void Through_ReferenceOfUnstatedRate_StillHoldsTheTruth()
    {
        var generator = new SeededGenerator(44);
        var fit = BlockWidthFit.Through(Condition(generator, 8, 5000), Condition(generator, 1, 6000), null);
        Assert.InRange(8, fit.Limits.Low - 0.1, fit.Limits.High + 0.1);
    }

    [Fact]
    public void Alone_OneBlock_FindsItsWidth()
    {
        var fit = BlockWidthFit.Alone(ShapeChoice.Of([ShapeChoiceTests.Session(new SeededGenerator(45), new UniformNormalShape(6, 8, 0.3), 3000)]));
        Close.Absolute(8, fit.WidthMs, 0.15);
        Assert.True(fit.IsApart);
    }

    [Fact]
    public void Alone_TwoBlocksOfOneWidth_AreNotToldApart()
    {
        var fit = BlockWidthFit.Alone(ShapeChoice.Of([ShapeChoiceTests.Session(new SeededGenerator(46), new UniformUniformNormalShape(6, 4, 4, 0.3), 3000)]));
        Assert.False(fit.IsApart);
    }

    private static ShapeChoice Condition(SeededGenerator generator, double reportMs, int trials) =>
        ShapeChoice.Of([ShapeChoiceTests.Session(generator, new UniformUniformNormalShape(6, reportMs, 4.1, 0.3), trials)]);
}
