using Tarry.Findings.Sticks.Measures;
using Tarry.Findings.Sticks.Recordings;
using Tarry.Statistics.Linearity;
using Tarry.Statistics.Lines;

namespace Tarry.Findings.Sticks.Ramps;

/// <summary>Linearity and edges from sweeps in few held levels: the mean position at each level, half-holds as replicates.</summary>
/// <remarks>
/// Where the axis stands still at its rest or its end is told by the levels nearest to it at which it does not: the line through the next two, met
/// with the place where it stands. Where that does not fall between the last level that stands and the first that does not, the axis jumps, and
/// where it does so is known to half a level.
/// </remarks>
internal static class StaircaseReadings
{
    private const string Name = "half-holds of the levels";
    private const double Least = 0.4;
    private const double NoiseReaches = 4;

    public static NonLinearityCurve? Add(SessionReadings readings, StickPart part, AxisRecording axis, IReadOnlyList<(Staircase Stairs, bool Upwards)> sweeps)
    {
        var levels = sweeps[0].Stairs.Levels;
        var alike = sweeps.Where(sweep => sweep.Stairs.Levels.AsSpan().SequenceEqual(levels)).ToList();
        var units = alike.SelectMany(sweep => sweep.Stairs.Halves).ToArray();
        var best = units.Select(unit => Departures(levels, unit, endPoint: false)).ToArray();
        readings.Add(StickMeasure.NonLinearityBestFit, part, GreatestDeparture.Of(best), Name, Rounding(axis, alike), axis.Step);
        readings.Add(StickMeasure.NonLinearityEndPoint, part, GreatestDeparture.Of([.. units.Select(unit => Departures(levels, unit, endPoint: true))]), Name, Rounding(axis, alike), axis.Step);
        readings.Add(StickMeasure.EffectiveBits, part, [.. best.Select(departures => EffectiveBits.FromError(200, Math.Sqrt(departures.Average(value => value * value) + (axis.Step * axis.Step / 12) + 1e-12)))], Name);
        readings.Refuse(new StickRefusal(StickRefusalReason.TooFewAStep, axis.Step / (levels[1] - levels[0]), 4), (StickMeasure.DifferentialNonLinearity, part));
        Hysteresis(readings, part, axis, alike);
        Edges(readings, part, axis, levels, units, Math.Max(Least, Math.Max(NoiseReaches * alike.Max(sweep => sweep.Stairs.Noise), axis.Step)));
        return NonLinearityCurve.Of(part, levels, best, steadyMotion: false);
    }

    // Rounded positions do not average where noise does not spread them.
    private static double Rounding(AxisRecording axis, List<(Staircase Stairs, bool Upwards)> sweeps) =>
        sweeps.Max(sweep => sweep.Stairs.Noise) > axis.Step / 10 ? 0 : axis.Step / 2;

    private static double[] Departures(double[] levels, double[] positions, bool endPoint)
    {
        var line = StraightLine.Fit(levels, positions);
        var slope = endPoint ? (positions[^1] - positions[0]) / (levels[^1] - levels[0]) : line.Slope;
        var start = endPoint ? positions[0] : line.At(levels[0]);
        return [.. levels.Select((level, index) => positions[index] - start - (slope * (level - levels[0])))];
    }

    private static void Hysteresis(SessionReadings readings, StickPart part, AxisRecording axis, List<(Staircase Stairs, bool Upwards)> sweeps)
    {
        var (up, down) = (sweeps.Where(sweep => sweep.Upwards).ToList(), sweeps.Where(sweep => !sweep.Upwards).ToList());
        if (up.Count == 0 || down.Count == 0)
        {
            readings.Refuse(new StickRefusal(StickRefusalReason.NoPassBack), (StickMeasure.Hysteresis, part));
            return;
        }

        double At(List<(Staircase Stairs, bool Upwards)> some, int level) => some.Average(sweep => (sweep.Stairs.Halves[0][level] + sweep.Stairs.Halves[1][level]) / 2);
        var count = sweeps[0].Stairs.Levels.Length;
        var inner = Enumerable.Range(count / 10, count - (2 * (count / 10)));
        readings.Add(StickMeasure.Hysteresis, part, [.. inner.Select(level => At(down, level) - At(up, level))], "levels there and back", allowance: axis.Step);
    }

    private static void Edges(SessionReadings readings, StickPart part, AxisRecording axis, double[] levels, double[][] units, double threshold)
    {
        var gap = (levels[^1] - levels[0]) / (levels.Length - 1);
        var zones = units.Select(unit => StaircaseEdge.DeadZone(levels, unit, threshold)).ToList();
        readings.Add(StickMeasure.InnerDeadZone, part, [.. zones.Select(zone => zone.HalfWidth)], Name, zones.Any(zone => zone.Jumps) ? gap / 2 : 0, Math.Max(axis.Step, threshold));
        var ends = units.Select(unit => StaircaseEdge.Saturation(levels, unit, threshold)).ToList();
        readings.Add(StickMeasure.OuterSaturation, part, [.. ends.Select(end => end.HalfWidth)], Name, ends.Any(end => end.Jumps) ? gap / 2 : 0, 1 + axis.Step + threshold, (levels[^1] - levels[0]) / 2);
    }
}
