using Tarry.Findings.Sticks.Measures;
using Tarry.Findings.Tests.Sticks;
using Tarry.Studies.Sticks;

namespace Tarry.StickSimulations;

/// <summary>Sticks with one fault each, to be crossed with resolutions, noises, rates and sittings.</summary>
internal static class Families
{
    private const StickPart X = StickPart.X;
    private const StickPart Y = StickPart.Y;
    private const StickPart Whole = StickPart.Whole;

    public static IEnumerable<StickCase> All()
    {
        yield return new("offset", new FaultyStick { OffsetX = 3, OffsetY = -2 }, Rest, new Truth(StickMeasure.CentreOffset, X, 3), new(StickMeasure.CentreOffset, Y, -2), new(StickMeasure.CentreOffset, Whole, Math.Sqrt(13)));
        yield return new("offset-turned", new FaultyStick { OffsetX = 3, OffsetY = -2 }, RestAndRim, new Truth(StickMeasure.CentreOffset, X, 3), new(StickMeasure.CentreOffset, Y, -2), new(StickMeasure.CentreOffset, Whole, Math.Sqrt(13)));
        yield return new("drift", new FaultyStick { DriftPerMinute = 0.5 }, RestAndRim, new Truth(StickMeasure.CentreDrift, X, 0.5));
        yield return new("centre", new FaultyStick(), RestAndRim, new Truth(StickMeasure.CentreOffset, X, 0), new(StickMeasure.CentreOffset, Whole, 0), new(StickMeasure.CentreDrift, X, 0));
        yield return new("circle", new FaultyStick { OffsetX = 2 }, Rim, [.. Circle(0, 0), new(StickMeasure.CircleRadius, Whole, 90), new(StickMeasure.CircleCentre, X, 2), new(StickMeasure.RadialDeviation, Whole, 0), new(StickMeasure.Hysteresis, X, 0), new(StickMeasure.Hysteresis, Y, 0)]);
        yield return new("ellipse", new FaultyStick { GainX = 1.03, GainY = 0.97 }, Rim, [.. Circle(100 * ((1.03 / 0.97) - 1), 0), new(StickMeasure.RadialDeviation, Whole, 5.4)]);
        yield return new("ellipse-skew", new FaultyStick { GainX = 1.03, GainY = 0.98, SkewDegrees = 1.5 }, Rim, new Truth(StickMeasure.NonOrthogonality, Whole, 1.5), new(StickMeasure.Squareness, Whole, 0));
        yield return new("skew", new FaultyStick { SkewDegrees = 3 }, Rim, Circle(double.NaN, 3));
        yield return new("skew-off", new FaultyStick { SkewDegrees = 3, OffsetX = 3, OffsetY = -2 }, Rim, Circle(double.NaN, 3));
        yield return new("rim-hyst", new FaultyStick { Hysteresis = 2 }, Rim, new Truth(StickMeasure.Hysteresis, X, 2), new(StickMeasure.Hysteresis, Y, 2));
        yield return new("rim-hyst-off", new FaultyStick { Hysteresis = 1, OffsetX = 3 }, Rim, new Truth(StickMeasure.Hysteresis, X, 1), new(StickMeasure.Hysteresis, Y, 1));
        yield return new("square", new FaultyStick { SquareMapping = true }, Rim, new Truth(StickMeasure.Squareness, Whole, 100));
        yield return new("sweep-hyst", new FaultyStick { Hysteresis = 2 }, Sweeps, new Truth(StickMeasure.Hysteresis, X, 2));
        yield return new("axial", new FaultyStick { DeadZone = 4 }, Sweeps, new Truth(StickMeasure.InnerDeadZone, X, 4), new(StickMeasure.OuterSaturation, X, 100));
        yield return new("axial-cut", new FaultyStick { DeadZone = 8, DeadZoneIsStretched = false }, Sweeps, new Truth(StickMeasure.InnerDeadZone, X, 8));
        yield return new("axial-off", new FaultyStick { DeadZone = 6, OffsetX = 2 }, Sweeps, new Truth(StickMeasure.InnerDeadZone, X, 6));
        yield return new("radial", new FaultyStick { DeadZone = 10, DeadZoneIsRadial = true }, Sweeps, new Truth(StickMeasure.InnerDeadZone, X, 10));
        yield return new("saturation", new FaultyStick { Saturation = 85 }, Sweeps, new Truth(StickMeasure.OuterSaturation, X, 85), new(StickMeasure.InnerDeadZone, X, 0));
        yield return new("ramp-dead", new FaultyStick { DeadZone = 6 }, Ramps, new Truth(StickMeasure.InnerDeadZone, X, 6));
        yield return new("ramp-dead-cut", new FaultyStick { DeadZone = 6, DeadZoneIsStretched = false }, Ramps, new Truth(StickMeasure.InnerDeadZone, X, 6));
        yield return new("stairs-dead", new FaultyStick { DeadZone = 4 }, Stairs, new Truth(StickMeasure.InnerDeadZone, X, 4), new(StickMeasure.OuterSaturation, X, 100), new(StickMeasure.Crosstalk, Y, 0));
        yield return new("stairs-cut", new FaultyStick { DeadZone = 8, DeadZoneIsStretched = false, OffsetX = 0.7 }, Stairs, new Truth(StickMeasure.InnerDeadZone, X, 8));
        yield return new("stairs-saturated", new FaultyStick { Saturation = 85, OffsetX = 1 }, Stairs, new Truth(StickMeasure.OuterSaturation, X, 85), new(StickMeasure.InnerDeadZone, X, 0));
        yield return new("stairs-hyst", new FaultyStick { Hysteresis = 2 }, Stairs, new Truth(StickMeasure.Hysteresis, X, 2));
        yield return new("return", new FaultyStick { ReturnLag = 0.8, ReturnScatter = 0.5 }, Flicks, new Truth(StickMeasure.ReturnLag, Whole, 0.8), new(StickMeasure.ReturnScatter, Whole, 0.5));
        yield return new("rotation", new FaultyStick { RotationDegrees = 1.5 }, Stops, new Truth(StickMeasure.AngularRotation, Whole, 1.5));
        yield return new("stops-skew", new FaultyStick { SkewDegrees = 3 }, Stops, new Truth(StickMeasure.AngularError, Whole, 2.99589610), new(StickMeasure.AngularRotation, Whole, (2.99589610 + 1.42347919 + 1.58063031) / 4));
        yield return new("stops-true", new FaultyStick(), Stops, new Truth(StickMeasure.AngularError, Whole, 0), new(StickMeasure.AngularRotation, Whole, 0));
        yield return new("noise", new FaultyStick { OffsetX = 0.37 }, RestAndRim, new Truth(StickMeasure.RestNoise, X, double.NaN));
        yield return new("jump", new FaultyStick { DelayMs = 12, RiseMs = 8 }, Jumps, new Truth(StickMeasure.StepLatency, X, 12 + (8 / Math.Log(9) * Math.Log(2))), new(StickMeasure.StepRise, X, 8));
    }

    private static Truth[] Circle(double gain, double skew) =>
    [
        .. double.IsNaN(gain) ? Array.Empty<Truth>() : [new(StickMeasure.GainDifference, Whole, gain)],
        new(StickMeasure.NonOrthogonality, Whole, skew),
        .. skew == 0 ? new Truth[] { new(StickMeasure.Squareness, Whole, 0) } : [],
    ];

    private static StickSession[] Rest(FaultyStick stick, ulong seed, string sitting) => [stick.Rest(seed, sitting: sitting, seconds: 70)];

    private static StickSession[] RestAndRim(FaultyStick stick, ulong seed, string sitting) => [stick.Rest(seed, sitting: sitting, seconds: 70), stick.Rim(seed, sitting: sitting)];

    private static StickSession[] Rim(FaultyStick stick, ulong seed, string sitting) => [stick.Rim(seed, sitting: sitting)];

    private static StickSession[] Sweeps(FaultyStick stick, ulong seed, string sitting) => [stick.Sweeps(seed, sitting: sitting)];

    private static StickSession[] Stairs(FaultyStick stick, ulong seed, string sitting) => [stick.Stairs(seed, sitting: sitting), stick.Rim(seed, sitting: sitting)];

    private static StickSession[] Ramps(FaultyStick stick, ulong seed, string sitting) => [stick.Sweeps(seed, known: false, sitting: sitting)];

    private static StickSession[] Flicks(FaultyStick stick, ulong seed, string sitting) => [stick.Flicks(seed, sitting: sitting), stick.Rim(seed, sitting: sitting)];

    private static StickSession[] Stops(FaultyStick stick, ulong seed, string sitting) => [stick.Stops(seed, sitting: sitting), stick.Rim(seed, sitting: sitting)];

    private static StickSession[] Jumps(FaultyStick stick, ulong seed, string sitting) => [stick.Jumps(seed, sitting: sitting)];
}
