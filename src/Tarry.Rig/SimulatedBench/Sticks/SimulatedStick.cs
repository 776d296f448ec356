using Tarry.Studies.Sticks;

namespace Tarry.Rig.SimulatedBench.Sticks;

/// <summary>
/// A stick with known faults, from the stem to the counts of its reports: play, skew, ellipse, offset, noise, dead zone, square mapping,
/// saturation, quantisation. Lengths are shares of the way from centre to gate; every fault is left out at its default.
/// </summary>
public sealed record SimulatedStick
{
    /// <summary>Time between reports.</summary>
    public double ReportIntervalMs { get; init; } = 4;

    /// <summary>The least count of an axis.</summary>
    public int Minimum { get; init; }

    /// <summary>The greatest count.</summary>
    public int Maximum { get; init; } = 4_095;

    /// <summary>Where x stands at rest.</summary>
    public double OffsetX { get; init; }

    /// <summary>Where y stands at rest.</summary>
    public double OffsetY { get; init; }

    /// <summary>How far x goes at the gate; an ellipse where it is not that of y.</summary>
    public double GainX { get; init; } = 1;

    /// <summary>How far y goes at the gate.</summary>
    public double GainY { get; init; } = 1;

    /// <summary>How far the axes are off the right angle: the y axis leans by this towards x.</summary>
    public double SkewDeg { get; init; }

    /// <summary>Play: the sensed position stays behind the stem by this either way.</summary>
    public double Play { get; init; }

    /// <summary>Standard deviation of the noise of a reading.</summary>
    public double NoiseSd { get; init; }

    /// <summary>How much x wanders in a minute at rest.</summary>
    public double DriftPerMinute { get; init; }

    /// <summary>Time constant of the device's own smoothing.</summary>
    public double SmoothingMs { get; init; }

    /// <summary>Inside this radius the device says centre; outside, the rest is stretched.</summary>
    public double RadialDeadZone { get; init; }

    /// <summary>Within this of the middle an axis says its middle; outside, the rest is stretched.</summary>
    public double AxialDeadZone { get; init; }

    /// <summary>The last part of the way to the gate that says the same.</summary>
    public double Saturation { get; init; }

    /// <summary>Whether the device maps the circle to a square.</summary>
    public bool MapsToSquare { get; init; }

    /// <summary>The power to which the device or a layer raises the radius; 1 for a straight line.</summary>
    public double CurvePower { get; init; } = 1;

    /// <summary>How often the stem swings a second after it is let go; 0: it creeps back.</summary>
    public double RingingHz { get; init; }

    /// <summary>The damping ratio of that, below 1.</summary>
    public double RingingDamping { get; init; } = 0.2;

    /// <summary>Standard deviation of where the stem comes to rest, along each axis: friction.</summary>
    public double ReturnSd { get; init; }

    /// <summary>A layer that reads this stick and says something else, in its own range; null for none.</summary>
    public SimulatedStick? Layer { get; init; }

    /// <summary>The range that an axis of its reports can say: that of the layer where there is one.</summary>
    public StickRange Range => Layer?.Range ?? new StickRange(Minimum, Maximum, 1);

    /// <summary>The sensed position of a stem, without play and noise.</summary>
    /// <remarks>x' = gx (x + y sin s) + ox, y' = gy y cos s + oy, for the skew s.</remarks>
    public (double X, double Y) Sensed(double x, double y)
    {
        var (sine, cosine) = Math.SinCos(SkewDeg * Math.PI / 180);
        return ((GainX * (x + (y * sine))) + OffsetX, (GainY * y * cosine) + OffsetY);
    }

    /// <summary>What the device makes of a sensed position: dead zones, curve, square, saturation, each in this order, within -1..1.</summary>
    public (double X, double Y) Shaped(double x, double y)
    {
        (x, y) = (Beyond(x, AxialDeadZone), Beyond(y, AxialDeadZone));
        var radius = Math.Sqrt((x * x) + (y * y));
        if (radius > 0)
        {
            var shaped = Math.Pow(Beyond(radius, RadialDeadZone), CurvePower);
            var stretch = MapsToSquare ? radius / Math.Max(Math.Abs(x), Math.Abs(y)) : 1;
            (x, y) = (x / radius * shaped * stretch, y / radius * shaped * stretch);
        }

        return (Math.Clamp(x / (1 - Saturation), -1, 1), Math.Clamp(y / (1 - Saturation), -1, 1));
    }

    /// <summary>The count of a shaped position.</summary>
    public int Count(double value) => (int)Math.Round(Minimum + ((value + 1) / 2 * (Maximum - Minimum)), MidpointRounding.ToEven);

    /// <summary>The position of a count.</summary>
    public double Position(int count) => (2.0 * (count - Minimum) / (Maximum - Minimum)) - 1;

    private static double Beyond(double value, double deadZone) =>
        Math.Abs(value) <= deadZone ? 0 : Math.Sign(value) * (Math.Abs(value) - deadZone) / (1 - deadZone);
}
