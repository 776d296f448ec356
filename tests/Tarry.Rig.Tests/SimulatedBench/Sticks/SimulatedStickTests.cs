using Tarry.Rig.SimulatedBench.Sticks;
using Tarry.Studies.Sticks;

namespace Tarry.Rig.Tests.SimulatedBench.Sticks;

/// <summary>The simulated stick against what its faults must come to by formulas that are not its own.</summary>
public class SimulatedStickTests
{
    private const double HalfRange = 4_095 / 2.0;

    [Fact]
    public void Rest_OffsetNoiseAndQuantisation_HaveTheMeanAndVarianceOfTheSum()
    {
        // A rounding of step q adds q^2/12 to the variance (W. R. Bennett, Bell System Technical Journal 27, 1948). Six standard errors.
        var stick = new SimulatedStick { OffsetX = 0.02, OffsetY = -0.01, NoiseSd = 0.01, Minimum = 0, Maximum = 255 };
        var samples = SimulatedStickRecording.Of(stick, StickProcedure.Rest, 1);

        var x = samples.X.ToArray();
        var sd = Math.Sqrt((1.275 * 1.275) + (1 / 12.0));
        Assert.Equal(15_000, x.Length);
        Assert.Equal(127.5 + (0.02 * 127.5), x.Average(), 6 * sd / Math.Sqrt(x.Length));
        Assert.Equal(127.5 - (0.01 * 127.5), samples.Y.ToArray().Average(), 6 * sd / Math.Sqrt(x.Length));
        Assert.Equal(1, Sd(x) / sd, 6 / Math.Sqrt(2.0 * x.Length));
    }

    [Fact]
    public void Rest_ThatDrifts_WandersAsFarAsStated()
    {
        var samples = SimulatedStickRecording.Of(new SimulatedStick { DriftPerMinute = 0.1 }, StickProcedure.Rest, 1);

        // The 60 s that are kept.
        Assert.Equal(0.1 * HalfRange, samples.X[^1] - samples.X[0], 1.0);
    }

    [Fact]
    public void RimSweep_EllipseAndSkew_EnclosesTheAreaOfTheLinearMap()
    {
        // A linear map of determinant d makes a circle of area pi an ellipse of area pi |d|; here d = gx gy cos s.
        var stick = new SimulatedStick { GainX = 0.9, GainY = 0.8, SkewDeg = 5 };
        var samples = SimulatedStickRecording.Of(stick, StickProcedure.RimSweep, 1);

        double area = 0;
        for (var index = 1; samples.Ticks[index] < 33_000_000; index++)
        {
            area += ((samples.X[index - 1] * samples.Y[index]) - (samples.X[index] * samples.Y[index - 1])) / 2;
        }

        Assert.Equal(0.9 * 0.8 * Math.Cos(5 * Math.PI / 180), area / 5 / (Math.PI * HalfRange * HalfRange), 0.002);
        // And its other way round comes with the other sign.
        Assert.True(samples.Y[^1] > HalfRange * 0.99);
    }

    [Fact]
    public void SlowRamp_Play_HoldsThePositionBackByItEitherWay()
    {
        var samples = SimulatedStickRecording.Of(new SimulatedStick { Play = 0.03 }, StickProcedure.SlowRamp, 1);

        // Steps of the guide: 4 s to the end, 20 s up, 2 s stay, 20 s back. The middle half of each way has the stem's mean in the middle.
        var up = Mean(samples, 9, 19);
        var down = Mean(samples, 31, 41);
        Assert.Equal(2 * 0.03 * HalfRange, down - up, 1.0);
        Assert.Equal(HalfRange, (down + up) / 2, 1.0);
    }

    [Theory]
    [InlineData(0.1, 0)]
    [InlineData(0, 0.2)]
    public void SlowRamp_DeadZoneOrSaturation_TakesItsShareOfTheWay(double deadZone, double saturation)
    {
        var samples = SimulatedStickRecording.Of(new SimulatedStick { AxialDeadZone = deadZone, Saturation = saturation, Maximum = 4_094 }, StickProcedure.SlowRamp, 1);

        // Of a way of 2 from end to end, a dead zone d takes 2 d, a saturation s takes s at each end; a count is 1/2047 wide.
        var way = Enumerable.Range(0, samples.Count).Where(index => samples.Ticks[index] is >= 4_000_000 and < 24_000_000).Select(index => samples.X[index]).ToList();
        Assert.Equal(deadZone, way.Count(x => x == 2_047) / (double)way.Count, 0.002);
        Assert.Equal(saturation, way.Count(x => x is 0 or 4_094) / (double)way.Count, 0.002);
    }

    [Fact]
    public void RimSweep_MappedToASquare_AlwaysHasAnAxisAtItsEnd()
    {
        var samples = SimulatedStickRecording.Of(new SimulatedStick { MapsToSquare = true }, StickProcedure.RimSweep, 1);

        for (var index = 0; index < samples.Count; index++)
        {
            Assert.True(samples.X[index] is 0 or 4_095 || samples.Y[index] is 0 or 4_095);
        }
    }

    [Fact]
    public void Release_ThatRings_FallsByTheLogarithmicDecrement()
    {
        // Successive peaks of a damped swing fall by exp(-d), d = 2 pi z / sqrt(1 - z^2) (any textbook of vibration, such as Thomson).
        var stick = new SimulatedStick { RingingHz = 20, RingingDamping = 0.1, ReportIntervalMs = 0.5, Maximum = 65_535 };
        var samples = SimulatedStickRecording.Of(stick, StickProcedure.FlickRelease, 1);

        var peaks = new List<(long Tick, double Height)>();
        for (var index = 1; index < samples.Count - 1 && samples.Ticks[index] < 1_000_000; index++)
        {
            if (samples.Ticks[index] > 620_000 && samples.X[index] > samples.X[index - 1] && samples.X[index] >= samples.X[index + 1])
            {
                peaks.Add((samples.Ticks[index], samples.X[index] - 32_767.5));
            }
        }

        var decrement = 2 * Math.PI * 0.1 / Math.Sqrt(1 - 0.01);
        Assert.Equal(decrement, Math.Log(peaks[0].Height / peaks[1].Height), 0.02);
        Assert.Equal(50_000, peaks[1].Tick - peaks[0].Tick, 1_000.0);
    }

    [Fact]
    public void AngleStops_OfASoundStick_AreAtTheirAngles()
    {
        var samples = SimulatedStickRecording.Of(new SimulatedStick(), StickProcedure.AngleStops, 1);

        var held = Enumerable.Range(0, samples.Count).Where(index => !double.IsNaN(samples.Stimulus[index])).ToList();
        Assert.Equal(8, held.Select(index => samples.Stimulus[index]).Distinct().Count());
        foreach (var index in held)
        {
            var angle = Math.Atan2(samples.Y[index] - HalfRange, samples.X[index] - HalfRange) * 180 / Math.PI;
            // Half a count over 0.85 of the half range is 0.017 degrees.
            Assert.Equal(0, Math.IEEERemainder(angle - samples.Stimulus[index], 360), 0.03);
        }
    }

    [Fact]
    public void Substitution_OfASoundStick_FollowsItsLevels()
    {
        var samples = SimulatedStickRecording.Of(new SimulatedStick { Play = 0.1, GainX = 0.7 }, StickProcedure.Substitution, 1);

        for (var index = 0; index < samples.Count; index++)
        {
            Assert.Equal(samples.Stimulus[index] * 4_095, samples.X[index], 0.5001);
            Assert.True(double.IsNaN(samples.StimulusY[index]));
        }
    }

    [Fact]
    public void Layer_WithACurve_ReadsTheDevicesCountsAndSpeaksInItsOwn()
    {
        var layer = new SimulatedStick { Minimum = -32_768, Maximum = 32_767, CurvePower = 2 };
        var samples = SimulatedStickRecording.Of(new SimulatedStick { Layer = layer, Maximum = 254 }, StickProcedure.Substitution, 1);

        var index = samples.Stimulus.IndexOf(0.75);
        // Count 190 of 0..254 (190.5 to the even one) is at 0.496063 of the way, whose square is 0.246078: -0.5 + 0.246078 x 32767.5 = 8062.9.
        Assert.Equal(8_063, samples.X[index]);
        Assert.Equal(new StickRange(-32_768, 32_767, 1), SimulatedStickRecording.Setup(new SimulatedStick { Layer = layer }, StickProcedure.Rest).X);
    }

    [Fact]
    public void Recording_OfTheSameSeed_IsTheSameAndOfAnotherIsNot()
    {
        var stick = new SimulatedStick { NoiseSd = 0.01, ReturnSd = 0.02, ReportIntervalMs = 8 };
        var one = SimulatedStickRecording.Of(stick, StickProcedure.FlickRelease, 1);

        Assert.True(one.X.SequenceEqual(SimulatedStickRecording.Of(stick, StickProcedure.FlickRelease, 1).X));
        Assert.False(one.X.SequenceEqual(SimulatedStickRecording.Of(stick, StickProcedure.FlickRelease, 2).X));
        Assert.Equal([0L, 8_000, 16_000], one.Ticks[..3].ToArray());
    }

    private static double Mean(StickSamples samples, int fromSeconds, int toSeconds) =>
        Enumerable.Range(0, samples.Count).Where(index => samples.Ticks[index] >= fromSeconds * 1_000_000L && samples.Ticks[index] < toSeconds * 1_000_000L).Average(index => samples.X[index]);

    private static double Sd(double[] values)
    {
        var mean = values.Average();
        return Math.Sqrt(values.Sum(value => (value - mean) * (value - mean)) / (values.Length - 1));
    }
}
