using System.Globalization;
using Tarry.Metrology;
using Tarry.Rig.Frames;
using Tarry.Studies.Sessions;

namespace Tarry.Rig.Runs;

/// <summary>From what the user asked for to what the rig is told.</summary>
internal static class RunParameters
{
    /// <summary>A spread of the press intervals below this aliases with report and frame periods.</summary>
    public const long NarrowestSpreadUs = 50_000;

    private static readonly string[] Sources = ["edge", "light", "echo"];

    /// <summary>Refuses what the rig would refuse and what would spoil the data.</summary>
    /// <exception cref="RunSettingsException">Something is out of its range.</exception>
    public static void Check(RunRequest request)
    {
        var settings = request.Settings;
        Require(
            request.AllowNarrowInterval || settings.IntervalMaxUs - settings.IntervalMinUs >= NarrowestSpreadUs,
            Text($"The press interval {settings.IntervalMinUs / 1000.0:0.###}..{settings.IntervalMaxUs / 1000.0:0.###} ms spreads over less than 50 ms: presses that regular can fall into step with the device's reports and give a wrong result with confidence."),
            "Widen it, such as 70..120 ms; allow it by name only to study the effect itself.");
        Require(
            Sources.Contains(settings.Response),
            $"The response '{settings.Response}' is not one the rig can see.",
            "Use edge, light or echo.");
        Require(
            settings.Actuation?.Broken() is null,
            Text($"The press cannot be made so: {settings.Actuation?.Broken()}."),
            "Give an axis two different levels from 0 to 65535 with the threshold between them, and a ramp only with a converter.");
        Require(
            settings.Actuation?.Axis is not { } axis || axis.RampUs < settings.HoldUs,
            Text($"The axis would be released before its ramp ends: hold {settings.HoldUs / 1000.0:0.###} ms."),
            "Hold longer than the ramp takes.");
        Require(
            request.Trials is null || (request.Trials > 0 && request.Trials <= RigParameter.Count.Maximum),
            Text($"{request.Trials} trials cannot be captured."),
            Text($"Ask for 1 to {RigParameter.Count.Maximum}."));
        Require(
            request.HalfWidthMs is null or (> 0 and < double.PositiveInfinity),
            Text($"A half-width of {request.HalfWidthMs} ms is not a target."),
            "Ask for more than 0 ms.");
        foreach (var (parameter, value) in Values(request, 0, 1, 0))
        {
            var minimum = parameter == RigParameter.IntervalMaximum ? Math.Max(settings.IntervalMinUs, parameter.Minimum) : parameter.Minimum;
            Require(
                value >= minimum && value <= parameter.Maximum,
                Text($"The {Named(parameter)} cannot be {value}."),
                Text($"The rig takes {minimum} to {parameter.Maximum}."));
        }
    }

    private static string Named(RigParameter parameter) => parameter.Key switch
    {
        "imin" => "shortest press interval in microseconds",
        "imax" => "longest press interval in microseconds",
        "hold" => "hold time in microseconds",
        "tout" => "time-out in microseconds",
        "rear" => "re-arm time in microseconds",
        "thre" => "light threshold",
        _ => $"rig's parameter {parameter.Key}",
    };

    /// <summary>The parameters of one run, the shortest interval before the longest, which may not be below it.</summary>
    /// <param name="request">What the user asked for.</param>
    /// <param name="segment">The segment's index: each has a seed of its own, the first the user's.</param>
    /// <param name="first">The first trial's number.</param>
    /// <param name="count">How many trials; 0 until stopped.</param>
    public static IEnumerable<(RigParameter Parameter, long Value)> Values(RunRequest request, int segment, long first, long count)
    {
        var settings = request.Settings;
        yield return (RigParameter.IntervalMinimum, settings.IntervalMinUs);
        yield return (RigParameter.IntervalMaximum, settings.IntervalMaxUs);
        yield return (RigParameter.Hold, settings.HoldUs);
        yield return (RigParameter.TimeOut, settings.TimeOutUs);
        yield return (RigParameter.Rearm, settings.RearmUs);
        yield return (RigParameter.EarlyMinimum, request.EarlyMinimumUs);
        yield return (RigParameter.ResponseSource, ResponseCode(settings.Response));
        yield return (RigParameter.Polarity, request.FallingEdge ? 1 : 0);
        yield return (RigParameter.Threshold, request.LightThreshold);
        yield return (RigParameter.Seed, SeedOf(settings.Seed, segment));
        yield return (RigParameter.FirstSequence, first);
        yield return (RigParameter.Count, count);
        yield return (RigParameter.Actuator, ActuatorCode(settings.Actuation));
        yield return (RigParameter.AxisLow, settings.Actuation?.Axis is { } resting ? resting.Low : RigParameter.AxisLow.Default);
        yield return (RigParameter.AxisHigh, settings.Actuation?.Axis is { } pressed ? pressed.High : RigParameter.AxisHigh.Default);
        yield return (RigParameter.AxisRamp, settings.Actuation?.Axis?.RampUs ?? RigParameter.AxisRamp.Default);
        yield return (RigParameter.ReferenceMode, settings.Actuation?.Kind == Actuation.Reference ? 1 : 0);
    }

    /// <summary>Without a new seed a run that goes on would press at the intervals of its beginning again.</summary>
    private static long SeedOf(uint seed, int segment) =>
        segment == 0 ? seed : Math.Max(1, (uint)SeededGenerator.ForPart(seed, (ulong)segment).NextUInt64());

    private static long ResponseCode(string response) => response switch { "light" => 1, "echo" => 2, _ => 0 };

    private static long ActuatorCode(Actuation? actuation) => actuation?.Axis?.Drive switch
    {
        AxisActuation.Switch => 1,
        AxisActuation.Converter => 2,
        _ => 0,
    };

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);

    private static void Require(bool holds, string message, string remedy)
    {
        if (!holds)
        {
            throw new RunSettingsException(message, remedy);
        }
    }
}
