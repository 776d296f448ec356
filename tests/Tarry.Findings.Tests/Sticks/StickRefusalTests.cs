using Tarry.Findings.Sticks;
using Tarry.Findings.Sticks.Measures;
using Tarry.Studies.Sticks;

namespace Tarry.Findings.Tests.Sticks;

/// <summary>A recording that cannot support a measure is refused for that measure, and serves the others.</summary>
public class StickRefusalTests
{
    private static readonly FaultyStick Stick = new() { RateHz = 250 };

    [Fact]
    public void RimSweep_OfHalfATurn_IsRefusedWithWhatToDo()
    {
        var refusal = Refused(StickMeasure.RadialDeviation, Cut(Stick.Rim(1, bothWays: false), 1.5));
        Assert.Equal(StickRefusalReason.TooFewTurns, refusal.Reason);
        Assert.InRange(refusal.Have, 0.4, 0.6);
        Assert.Contains("three whole turns", StickRefusalWording.Sentence(refusal), StringComparison.Ordinal);
    }

    [Fact]
    public void RimSweep_CutOffAtTheEnd_IsRefusedForTheCircleAndServesTheRange()
    {
        var finding = Finding((Stick with { GainX = 1.25, GainY = 1.25 }).Rim(2));
        Assert.Equal(StickRefusalReason.CutOff, Assert.IsType<StickRefusal>(finding.Of(StickMeasure.RadialDeviation)).Reason);
        Assert.Equal(StickRefusalReason.CutOff, Assert.IsType<StickRefusal>(finding.Of(StickMeasure.Squareness)).Reason);
        Assert.InRange(finding.Estimate(StickMeasure.Reach, StickPart.Right)!.Value, 99.5, 100.5);
    }

    [Fact]
    public void RimSweep_OneWayOnly_IsRefusedForHysteresisAndServesTheCircle()
    {
        var finding = Finding(Stick.Rim(3, bothWays: false));
        Assert.Equal(StickRefusalReason.OneWayOnly, Assert.IsType<StickRefusal>(finding.Of(StickMeasure.Hysteresis, StickPart.X)).Reason);
        Assert.NotNull(finding.Estimate(StickMeasure.CircleRadius));
    }

    [Fact]
    public void RimSweep_TooFast_IsRefused() =>
        Assert.Equal(StickRefusalReason.TooFast, Refused(StickMeasure.CircleRadius, (Stick with { RateHz = 100 }).Rim(4, secondsATurn: 0.25)).Reason);

    [Fact]
    public void Rest_OfTwentySeconds_IsRefusedForDriftAndServesTheCentre()
    {
        var finding = Finding(Stick.Rest(5, seconds: 20));
        Assert.Equal(StickRefusalReason.TooShort, Assert.IsType<StickRefusal>(finding.Of(StickMeasure.CentreDrift, StickPart.X)).Reason);
        Assert.NotNull(finding.Estimate(StickMeasure.CentreOffset, StickPart.X));
    }

    [Fact]
    public void Rest_OfSixtySeconds_TellsTheDriftThoughItsLastPositionComesBeforeTheEnd() =>
        Assert.NotNull(Finding(Stick.Rest(5, seconds: 60)).Estimate(StickMeasure.CentreDrift, StickPart.X));

    [Theory]
    [InlineData(StickProcedure.Rest)]
    [InlineData(StickProcedure.FlickRelease)]
    [InlineData(StickProcedure.RimSweep)]
    [InlineData(StickProcedure.SlowRamp)]
    public void Recording_WhoseTimesAreAllAlike_IsRefused(StickProcedure procedure)
    {
        var session = procedure switch
        {
            StickProcedure.Rest => Stick.Rest(5, seconds: 60),
            StickProcedure.FlickRelease => Stick.Flicks(5),
            StickProcedure.RimSweep => Stick.Rim(5),
            _ => Stick.Sweeps(5, known: false),
        };
        var finding = Finding(new StickSession(session.Record, new StickSamples(new long[session.Samples.Count], session.Samples.X.ToArray(), session.Samples.Y.ToArray())));
        Assert.NotNull(Assert.IsType<StickRefusal>(finding.Of(StickMeasure.ReportInterval)));
        Assert.All(finding.Measures, result => Assert.True(result.Outcome is StickRefusal or StickEstimate { Value: not double.NaN }));
    }

    [Fact]
    public void Rest_OfAHundredPositions_IsRefused() =>
        Assert.Equal(StickRefusalReason.TooFewPositions, Refused(StickMeasure.CentreOffset, Stick.Rest(6, seconds: 0.4), StickPart.X).Reason);

    [Fact]
    public void Rest_AllAlikeOnAFineScale_IsRefusedUnlessTurnsShowTheStep()
    {
        var coarse = Stick with { Steps = 256, Noise = 0, OffsetX = 3 };
        var refusal = Refused(StickMeasure.CentreOffset, coarse.Rest(6, seconds: 10), StickPart.X);
        Assert.Equal(StickRefusalReason.StepNotShown, refusal.Reason);
        Assert.Contains("slow turns", StickRefusalWording.Sentence(refusal), StringComparison.Ordinal);
        var known = StickFindings.Of([], [coarse.Rest(6, seconds: 10), coarse.Rim(6)])!.Conditions[0].Estimate(StickMeasure.CentreOffset, StickPart.X)!;
        Assert.InRange(3, known.Low, known.High);
    }

    [Fact]
    public void Rest_InWhichTheStickMoved_IsRefused()
    {
        var moved = Stick.Rim(6);
        var given = new StickSession(moved.Record with { Stick = moved.Setup with { Procedure = StickProcedure.Rest } }, moved.Samples);
        Assert.Equal(StickRefusalReason.NotAtRest, Refused(StickMeasure.RestNoise, given, StickPart.Y).Reason);
    }

    [Fact]
    public void Stops_GoneRoundTheOtherWay_AreRefused()
    {
        var stops = Stick.Stops(8);
        var mirrored = new StickSamples(stops.Samples.Ticks.ToArray(), stops.Samples.X.ToArray(), [.. stops.Samples.Y.ToArray().Select(y => -y)], stops.Samples.Stimulus.ToArray());
        var refusal = Refused(StickMeasure.AngularError, new StickSession(stops.Record, mirrored));
        Assert.Equal(StickRefusalReason.StopsDisagree, refusal.Reason);
        Assert.Contains("y grows upwards", StickRefusalWording.Sentence(refusal), StringComparison.Ordinal);
    }

    [Fact]
    public void RimSweep_CutInsideTheRange_IsRefusedForTheCircle()
    {
        var rim = Stick.Rim(2);
        double[] Cut(ReadOnlySpan<double> counts) => [.. counts.ToArray().Select(count => Math.Clamp(count, -0.8 * FaultyStick.Half, 0.8 * FaultyStick.Half))];
        var finding = Finding(new StickSession(rim.Record, new StickSamples(rim.Samples.Ticks.ToArray(), Cut(rim.Samples.X), Cut(rim.Samples.Y))));
        Assert.Equal(StickRefusalReason.CutOff, Assert.IsType<StickRefusal>(finding.Of(StickMeasure.Hysteresis, StickPart.X)).Reason);
    }

    [Theory]
    [InlineData(0.8, true)]
    [InlineData(1, false)]
    public void RimSweep_WhoseDistanceIsCut_IsRefusedForTheCircleAndServesTheRange(double longest, bool cut)
    {
        var rim = (Stick with { OffsetX = 2 }).Rim(2);
        var (x, y) = (rim.Samples.X.ToArray(), rim.Samples.Y.ToArray());
        for (var i = 0; i < x.Length; i++)
        {
            var scale = Math.Min(1, longest * FaultyStick.Half / Math.Sqrt((x[i] * x[i]) + (y[i] * y[i])));
            (x[i], y[i]) = (Math.Round(scale * x[i]), Math.Round(scale * y[i]));
        }

        var finding = Finding(new StickSession(rim.Record, new StickSamples(rim.Samples.Ticks.ToArray(), x, y)));
        Assert.Equal(cut, finding.Of(StickMeasure.RadialDeviation) is StickRefusal { Reason: StickRefusalReason.CutOff });
        Assert.Equal(cut, finding.Of(StickMeasure.Hysteresis, StickPart.X) is StickRefusal { Reason: StickRefusalReason.CutOff });
        Assert.InRange(finding.Estimate(StickMeasure.Reach, StickPart.Up)!.Value, cut ? 79.9 : 89.5, cut ? 80.1 : 90.5);
    }

    [Theory]
    [InlineData(97, 6, true)]
    [InlineData(101, 0, true)]
    [InlineData(100, 0, false)]
    public void RimSweep_CutALittleAtTheEnd_IsRefusedForTheCircleWhereItIsMoreThanTouched(double radius, double offset, bool cut)
    {
        var finding = Finding((Stick with { GateRadius = radius, OffsetX = offset, Steps = 4_096 }).Rim(2));
        Assert.Equal(cut, finding.Of(StickMeasure.GainDifference) is StickRefusal { Reason: StickRefusalReason.CutOff });
        Assert.InRange(finding.Estimate(StickMeasure.Reach, StickPart.Right)!.Value, 99.5, 100.5);
    }

    [Fact]
    public void Stops_CountedFromAboveInPlaceOfTheRight_AreRefused()
    {
        var stops = Stick.Stops(8);
        var fromAbove = stops.Samples.Stimulus.ToArray().Select(angle => (angle + 90) % 360).ToArray();
        var turned = new StickSamples(stops.Samples.Ticks.ToArray(), stops.Samples.X.ToArray(), stops.Samples.Y.ToArray(), fromAbove);
        Assert.Equal(StickRefusalReason.StopsDisagree, Refused(StickMeasure.AngularRotation, new StickSession(stops.Record, turned)).Reason);
    }

    [Fact]
    public void Levels_FarApart_DoNotExcludeADeadZoneBetweenThem()
    {
        var cut = Stick with { DeadZone = 2, DeadZoneIsStretched = false };
        var held = Finding(cut.Stairs(3)).Estimate(StickMeasure.InnerDeadZone, StickPart.X)!;
        Assert.InRange(2, held.Low, held.High);

        // A ramp shows it, and counts before levels that may hide it.
        var ramp = cut.Sweeps(4, known: false);
        Assert.InRange(StickFindings.Of([], [cut.Stairs(3), ramp])!.Conditions[0].Estimate(StickMeasure.InnerDeadZone, StickPart.X)!.Value, 1.9, 2.1);
    }

    [Fact]
    public void Flicks_OfThreeReleases_AreRefused() =>
        Assert.Equal(StickRefusalReason.TooFewReleases, Refused(StickMeasure.ReturnScatter, Stick.Flicks(7, count: 3)).Reason);

    [Fact]
    public void Stops_VisitedOnce_AreRefused() =>
        Assert.Equal(StickRefusalReason.TooFewVisits, Refused(StickMeasure.AngularError, Stick.Stops(8, rounds: 1)).Reason);

    [Fact]
    public void Ramp_WithoutKnownLevels_IsRefusedForHysteresisAndSaturation()
    {
        var finding = Finding(Stick.Sweeps(9, known: false));
        Assert.Equal(StickRefusalReason.NoStimulus, Assert.IsType<StickRefusal>(finding.Of(StickMeasure.Hysteresis, StickPart.X)).Reason);
        Assert.Equal(StickRefusalReason.NoStimulus, Assert.IsType<StickRefusal>(finding.Of(StickMeasure.OuterSaturation, StickPart.X)).Reason);
        Assert.EndsWith("steady motion assumed", finding.Estimate(StickMeasure.NonLinearityBestFit, StickPart.X)!.ReplicateOf, StringComparison.Ordinal);
    }

    [Fact]
    public void Measures_ThatNobodyRecorded_SaySo() =>
        Assert.Equal(StickRefusalReason.NotRecorded, Refused(StickMeasure.ReturnLag, Stick.Rest(10, seconds: 20)).Reason);

    [Fact]
    public void EveryReason_HasItsSentence() =>
        Assert.All(Enum.GetValues<StickRefusalReason>(), reason => Assert.NotEmpty(StickRefusalWording.Sentence(new StickRefusal(reason))));

    [Fact]
    public void EveryMeasure_HasItsText() => Assert.All(Enum.GetValues<StickMeasure>(), measure =>
    {
        var text = StickMeasureText.Of(measure);
        Assert.All([text.Name, text.Definition, text.Formula, text.Source, text.NotTold], Assert.NotEmpty);
    });

    private static StickFinding Finding(StickSession session) => StickFindings.Of([], [session])!.Conditions[0];

    private static StickRefusal Refused(StickMeasure measure, StickSession session, StickPart part = StickPart.Whole) =>
        Assert.IsType<StickRefusal>(Finding(session).Of(measure, part));

    private static StickSession Cut(StickSession session, double seconds)
    {
        var count = (int)(seconds * Stick.RateHz);
        var samples = session.Samples;
        return session with { Samples = new StickSamples(samples.Ticks[..count].ToArray(), samples.X[..count].ToArray(), samples.Y[..count].ToArray()) };
    }
}
