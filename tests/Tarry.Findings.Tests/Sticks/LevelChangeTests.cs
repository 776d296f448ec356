using Tarry.Findings.Sticks;
using Tarry.Findings.Sticks.Measures;
using Tarry.Studies.Sticks;

namespace Tarry.Findings.Tests.Sticks;

/// <summary>While a converter takes over a level nobody knows it; positions of those moments are left out, and the others serve.</summary>
public class LevelChangeTests
{
    private static readonly FaultyStick Stick = new() { RateHz = 1_000, DeadZone = 6, Saturation = 85, Hysteresis = 1 };

    [Fact]
    public void Levels_UnknownAtEveryChange_TellWhatTheyTellElse()
    {
        var whole = Finding(Stick.Stairs(3));
        var finding = Finding(Unknown(Stick.Stairs(3), milliseconds: 6));
        Assert.All([StickMeasure.InnerDeadZone, StickMeasure.OuterSaturation, StickMeasure.Hysteresis], measure =>
        {
            var (known, found) = (whole.Estimate(measure, StickPart.X)!, finding.Estimate(measure, StickPart.X)!);
            Assert.InRange(found.Value, known.Low, known.High);
        });
    }

    [Fact]
    public void Jumps_UnknownAtTheirMoment_TellTheDelay()
    {
        var stick = Stick with { DeadZone = 0, Saturation = 100, Hysteresis = 0, DelayMs = 12, RiseMs = 8 };
        var found = Finding(Unknown(stick.Jumps(3), milliseconds: 6)).Estimate(StickMeasure.StepLatency, StickPart.X)!;
        Assert.InRange(12 + (8 / Math.Log(9) * Math.Log(2)), found.Low, found.High);
    }

    [Fact]
    public void Levels_UnknownForLong_AreNotBridged()
    {
        var stairs = Stick.Stairs(3);
        var levels = stairs.Samples.Stimulus.ToArray();
        levels.AsSpan(levels.Length / 4, 2_000).Fill(double.NaN);
        var refusal = Assert.IsType<StickRefusal>(Finding(Given(stairs, levels)).Of(StickMeasure.StepLatency));
        Assert.Equal(StickRefusalReason.NotRecorded, refusal.Reason);
    }

    // The positions that come within so long before and after a change of the level.
    private static StickSession Unknown(StickSession session, int milliseconds)
    {
        var known = session.Samples.Stimulus.ToArray();
        var levels = (double[])known.Clone();
        for (var i = 1; i < known.Length; i++)
        {
            if (known[i] != known[i - 1])
            {
                levels.AsSpan(i - (milliseconds / 2), milliseconds).Fill(double.NaN);
            }
        }

        return Given(session, levels);
    }

    private static StickSession Given(StickSession session, double[] levels) =>
        new(session.Record, new StickSamples(session.Samples.Ticks.ToArray(), session.Samples.X.ToArray(), session.Samples.Y.ToArray(), levels, session.Samples.StimulusY.ToArray()));

    private static StickFinding Finding(StickSession session) => StickFindings.Of([], [session])!.Conditions[0];
}
