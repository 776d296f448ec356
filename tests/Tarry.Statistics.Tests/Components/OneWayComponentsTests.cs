using Tarry.Statistics.Components;

namespace Tarry.Statistics.Tests.Components;

public class OneWayComponentsTests
{
    // O. L. Davies, "Statistical Methods in Research and Production", 1947; R lme4's Dyestuff: six batches of five.
    private static readonly double[][] Dyestuff =
    [
        [1545, 1440, 1440, 1520, 1580],
        [1540, 1555, 1490, 1560, 1495],
        [1595, 1550, 1605, 1510, 1560],
        [1445, 1440, 1595, 1465, 1545],
        [1595, 1630, 1515, 1635, 1625],
        [1520, 1455, 1450, 1480, 1445],
    ];

    [Fact]
    public void Of_Dyestuff_GivesItsPublishedComponents()
    {
        // R: lmer(Yield ~ 1 + (1 | Batch), Dyestuff), REML = ANOVA on balanced data.
        var found = OneWayComponents.Of(Dyestuff);
        Close.Relative(11271.5, found.BetweenMeanSquare, 1e-12);
        Close.Relative(2451.25, found.WithinMeanSquare, 1e-12);
        Close.Relative(1764.05, found.Between, 1e-12);
        Close.Relative(1527.5, found.Mean, 1e-12);
        Close.Relative(0.418487414893, found.Between / (found.Between + found.Within), 1e-11);
    }

    [Fact]
    public void Of_UnbalancedDyestuff_TakesTheEffectiveGroupSize()
    {
        // Without A1, A2 and B1; R: anova(lm(Yield ~ Batch)), n0 of Searle, Casella and McCulloch.
        var found = OneWayComponents.Of([Dyestuff[0][2..], Dyestuff[1][1..], .. Dyestuff[2..]]);
        Close.Relative(10865.9259259, found.BetweenMeanSquare, 1e-11);
        Close.Relative(2505.55555556, found.WithinMeanSquare, 1e-11);
        Close.Relative(4.47407407407, found.EffectiveGroupSize, 1e-11);
        Close.Relative(1868.62582781, found.Between, 1e-11);
    }

    [Fact]
    public void Between_WhereGroupsAreTooAlike_IsZero()
    {
        // Mean squares of R lme4's Dyestuff2, whose batch variance REML gives as 0.
        Assert.Equal(0, new OneWayComponents(0, 8.33632576, 14.9458896, 5).Between);
    }

    [Fact]
    public void Of_Rail_GivesItsPublishedComponents()
    {
        // R nlme's Rail: three travel times on each of six rails.
        var found = OneWayComponents.Of([[55, 53, 54], [26, 37, 32], [78, 91, 85], [92, 100, 96], [49, 51, 50], [80, 85, 83]]);
        Close.Relative(1862.1, found.BetweenMeanSquare, 1e-11);
        Close.Relative(16.1666666667, found.WithinMeanSquare, 1e-11);
        Close.Relative(615.311111111, found.Between, 1e-11);
        Close.Relative(66.5, found.Mean, 1e-12);
    }

    [Fact]
    public void Of_SulphurInCoal_GivesRepeatabilityAndReproducibilityOfIso5725()
    {
        // ISO 5725-2:1994, sulphur in coal, level 1, eight laboratories; printed m 0.690, s_r 0.015, s_R 0.026 from rounded cells.
        var found = OneWayComponents.Of(
        [
            [0.71, 0.71, 0.70, 0.71],
            [0.69, 0.67, 0.68],
            [0.66, 0.65, 0.69],
            [0.67, 0.65, 0.66],
            [0.70, 0.69, 0.66, 0.71],
            [0.73, 0.74, 0.73],
            [0.71, 0.71, 0.69],
            [0.70, 0.65, 0.68],
        ]);
        Close.Absolute(0.690, found.Mean, 0.001);
        Close.Absolute(0.015, Math.Sqrt(found.Within), 0.001);
        Close.Absolute(0.026, Math.Sqrt(found.Between + found.Within), 0.001);

        // Unrounded, R: aov(x ~ lab).
        Close.Absolute(0.0155307342, Math.Sqrt(found.Within), 5e-11);
        Close.Absolute(3.241758242, found.EffectiveGroupSize, 5e-10);
        Close.Absolute(0.0218824902, Math.Sqrt(found.Between), 5e-11);
    }

    [Fact]
    public void Of_OneGroup_IsRefused() => Assert.Throws<ArgumentException>(() => OneWayComponents.Of([[1, 2, 3]]));

    [Fact]
    public void Of_SingleValues_IsRefused() => Assert.Throws<ArgumentException>(() => OneWayComponents.Of([[1], [2]]));
}
