using Tarry.Findings.Sticks;
using Tarry.Findings.Sticks.Measures;
using Tarry.Findings.Sticks.Rest;
using Tarry.Studies.Sticks;

namespace Tarry.Findings.Tests.Sticks;

public class RestLineTests
{
    private static readonly FaultyStick Stick = new() { RateHz = 250, Noise = 0.05 };

    [Fact]
    public void Lines_OfAHumInSomeSessions_AreOneWithItsSessions()
    {
        var humming = Stick with { Hum = (50, 0.02) };
        var lines = Lines(humming.Rest(1, sitting: "one"), humming.Rest(2, sitting: "two"), Stick.Rest(3, sitting: "three"));
        Assert.Equal([StickPart.X, StickPart.Y], lines.Select(line => line.Part));
        foreach (var line in lines)
        {
            Assert.InRange(line.FrequencyHz, 50 - line.StepHz, 50 + line.StepHz);
            // The root mean square of a sine is its amplitude over the root of two.
            Assert.InRange(line.RmsPercent, 0.9 * 0.02 / Math.Sqrt(2), 1.1 * 0.02 / Math.Sqrt(2));
            Assert.Equal((2, 3), (line.ToldIn, line.Sessions));
            Assert.Equal(50, line.MainsHz);
        }
    }

    [Fact]
    public void Lines_OfTonesApart_AreApart()
    {
        var lines = Lines((Stick with { Hum = (40, 0.02) }).Rest(1, sitting: "one"), (Stick with { Hum = (70, 0.02) }).Rest(2, sitting: "two"));
        Assert.Equal([40, 70, 40, 70], lines.Select(line => 10 * Math.Round(line.FrequencyHz / 10)));
        Assert.All(lines, line => Assert.Null(line.MainsHz));
    }

    [Theory]
    [InlineData(119.9, 0.25, 60.0)]
    [InlineData(150, 0.25, 50.0)]
    [InlineData(55, 0.25, null)]
    [InlineData(50, 4, null)]
    public void MainsHz_IsNamedWhereTheStepTellsIt(double frequency, double step, double? mains) =>
        Assert.Equal(mains, new ToldLine(StickPart.X, frequency, step, 0.1, 1, 1).MainsHz);

    [Theory]
    [InlineData(0.3)]
    [InlineData(-0.7)]
    public void Spectrum_OfPositionsThatAreAlike_IsNotThereAndTellsNoTone(double offset)
    {
        // What the rounding of numbers leaves of a constant is no noise, though it has a spectrum.
        var finding = Finding((Stick with { Noise = 0, OffsetX = offset, OffsetY = offset }).Rest(4));
        Assert.Empty(finding.Spectra);
        Assert.Empty(finding.Lines);
        Assert.Single(finding.Clouds);
    }

    private static IReadOnlyList<ToldLine> Lines(params StickSession[] sessions) => Finding(sessions).Lines;

    private static StickFinding Finding(params StickSession[] sessions) =>
        StickFindings.Of([new() { Id = "pad", Factors = new Dictionary<string, string>() }], sessions)!.Conditions.Single();
}
