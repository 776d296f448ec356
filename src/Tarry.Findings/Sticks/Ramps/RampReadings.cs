using Tarry.Findings.Sticks.Measures;
using Tarry.Findings.Sticks.Recordings;
using Tarry.Findings.Sticks.Steps;

namespace Tarry.Findings.Sticks.Ramps;

/// <summary>What sweeps and jumps along an axis show: with known levels all of it, without them what a steady motion tells.</summary>
internal static class RampReadings
{
    private const double Moves = 20;

    private static readonly StickMeasure[] All =
    [
        StickMeasure.NonLinearityBestFit, StickMeasure.NonLinearityEndPoint, StickMeasure.DifferentialNonLinearity, StickMeasure.EffectiveBits,
        StickMeasure.Hysteresis, StickMeasure.InnerDeadZone, StickMeasure.OuterSaturation,
    ];

    public static IReadOnlyList<NonLinearityCurve> Add(SessionReadings readings, StickRecording recording)
    {
        var curves = new List<NonLinearityCurve>();
        foreach (var (part, otherPart) in new[] { (StickPart.X, StickPart.Y), (StickPart.Y, StickPart.X) })
        {
            var (axis, other) = (recording.Axis(part), recording.Axis(otherPart));
            var known = axis.LevelPercent.Where(level => !double.IsNaN(level)).DefaultIfEmpty().ToList();
            if (known.Max() - known.Min() >= Moves)
            {
                var levels = recording.WithoutChanges(part);
                if (AddLevels(readings, levels, levels.Axis(part), part) is { } curve)
                {
                    curves.Add(curve);
                    CrosstalkReadings.Add(readings, levels, levels.Axis(part), levels.Axis(otherPart), otherPart);
                }
            }
            else if (axis.LevelPercent.Length == 0 && other.LevelPercent.Length == 0 && Span(axis) >= Span(other) && Span(axis) >= Moves && AddMotion(readings, recording, axis, part) is { } curve)
            {
                curves.Add(curve);
            }
        }

        return curves;
    }

    private static NonLinearityCurve? AddLevels(SessionReadings readings, StickRecording recording, AxisRecording axis, StickPart part)
    {
        var sweeps = LevelPasses.Sweeps(axis);
        if (JumpReadings.Has(axis))
        {
            JumpReadings.Add(readings, recording, axis, part);
        }

        if (sweeps.Count == 0)
        {
            Refuse(readings, part, sweeps.Count);
            return null;
        }

        if (LevelPasses.OfStairs(axis, sweeps) is { Count: > 0 } stairs)
        {
            return StaircaseReadings.Add(readings, part, axis, stairs);
        }

        var pairs = new PassPairs(LevelPasses.OfLevels(axis, sweeps));
        EdgeReadings.Add(readings, part, pairs);
        return LinearityReadings.Add(readings, part, pairs);
    }

    private static NonLinearityCurve? AddMotion(SessionReadings readings, StickRecording recording, AxisRecording axis, StickPart part)
    {
        var passes = LevelPasses.OfMotion(recording, axis);
        if (passes.Count == 0)
        {
            Refuse(readings, part, passes.Count);
            return null;
        }

        var pairs = new PassPairs(passes);
        EdgeReadings.Add(readings, part, pairs);
        return LinearityReadings.Add(readings, part, pairs);
    }

    private static void Refuse(SessionReadings readings, StickPart part, int passes) =>
        readings.Refuse(new StickRefusal(StickRefusalReason.TooFewPasses, passes, 2), [.. All.Select(measure => (measure, part))]);

    private static double Span(AxisRecording axis) => axis.Percent.Length == 0 ? 0 : axis.Percent.Max() - axis.Percent.Min();
}
