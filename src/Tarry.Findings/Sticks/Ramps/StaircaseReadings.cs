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
    private const int FewestLevels = 5;

    // An edge is found beyond two levels, by positions of which either may be rounded either way.
    private const double EdgeFromTwo = 2.5;

    public static NonLinearityCurve? Add(SessionReadings readings, StickPart part, AxisRecording axis, IReadOnlyList<(Staircase Stairs, bool Upwards)> sweeps)
    {
        var levels = sweeps[0].Stairs.Levels;
        var alike = sweeps.Where(sweep => sweep.Stairs.Levels.AsSpan().SequenceEqual(levels)).ToList();
        var units = alike.SelectMany(sweep => sweep.Stairs.Halves).ToArray();
        // Noise about the end of the range is cut off there, so that the mean lies inside.
        var cut = 100 - (NoiseReaches * alike.Max(sweep => sweep.Stairs.PositionNoise)) - axis.Step;
        var inside = Enumerable.Range(0, levels.Length).Where(place => units.All(unit => Math.Abs(unit[place]) < cut)).ToArray();
        if (inside.Length < FewestLevels)
        {
            readings.Refuse(new StickRefusal(StickRefusalReason.TooFewPasses, inside.Length, FewestLevels), (StickMeasure.NonLinearityBestFit, part), (StickMeasure.NonLinearityEndPoint, part));
            return null;
        }

        double[] At(double[] values) => [.. inside.Select(place => values[place])];
        var within = At(levels);
        var rounding = Rounding(axis, alike);
        var best = units.Select(unit => Departures(within, At(unit), endPoint: false)).ToArray();
        readings.Add(StickMeasure.NonLinearityBestFit, part, GreatestDeparture.Of(best), Name, rounding, axis.Step);
        readings.Add(StickMeasure.NonLinearityEndPoint, part, GreatestDeparture.Of([.. units.Select(unit => Departures(within, At(unit), endPoint: true))]), Name, rounding, axis.Step);
        var noise = Math.Max(alike.Average(sweep => sweep.Stairs.Variance), axis.Step * axis.Step / 12);
        readings.Add(StickMeasure.EffectiveBits, part, [.. best.Select(departures => EffectiveBits.FromError(200, Math.Sqrt(departures.Average(value => value * value) + noise + 1e-12)))], Name);
        readings.Refuse(new StickRefusal(StickRefusalReason.TooFewAStep, axis.Step / (levels[1] - levels[0]), 4), (StickMeasure.DifferentialNonLinearity, part));
        Hysteresis(readings, part, axis, alike, rounding);
        Edges(readings, part, axis, levels, [.. units.Select(unit => Ended(unit, 100 - cut))], Math.Max(Least, Math.Max(NoiseReaches * alike.Max(sweep => sweep.Stairs.Noise), axis.Step)), rounding);
        return NonLinearityCurve.Of(part, within, best, steadyMotion: false);
    }

    // Where the last position is within noise of the end of the range, it is the end.
    private static double[] Ended(double[] positions, double near)
    {
        var ended = (double[])positions.Clone();
        ended[0] = Math.Abs(ended[0] + 100) < near ? -100 : ended[0];
        ended[^1] = Math.Abs(ended[^1] - 100) < near ? 100 : ended[^1];
        return ended;
    }

    // Rounded positions do not average where noise does not spread them.
    private static double Rounding(AxisRecording axis, List<(Staircase Stairs, bool Upwards)> sweeps) =>
        RoundingError.Of(axis.Step, Math.Pow(sweeps.Min(sweep => sweep.Stairs.PositionNoise), 2));

    private static double[] Departures(double[] levels, double[] positions, bool endPoint)
    {
        var line = StraightLine.Fit(levels, positions);
        var slope = endPoint ? (positions[^1] - positions[0]) / (levels[^1] - levels[0]) : line.Slope;
        var start = endPoint ? positions[0] : line.At(levels[0]);
        return [.. levels.Select((level, index) => positions[index] - start - (slope * (level - levels[0])))];
    }

    private static void Hysteresis(SessionReadings readings, StickPart part, AxisRecording axis, List<(Staircase Stairs, bool Upwards)> sweeps, double rounding)
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
        readings.Add(StickMeasure.Hysteresis, part, [.. inner.Select(level => At(down, level) - At(up, level))], "levels there and back", 2 * rounding, axis.Step);
    }

    private static void Edges(SessionReadings readings, StickPart part, AxisRecording axis, double[] levels, double[][] units, double threshold, double rounding)
    {
        var gap = (levels[^1] - levels[0]) / (levels.Length - 1);
        var zones = units.Select(unit => StaircaseEdge.DeadZone(levels, unit, threshold)).ToList();

        // Where the level next to the middle moves already, a zone that is cut out, beyond which nothing is stretched, would fall between levels.
        var hidden = zones.Average(zone => zone.HalfWidth) < threshold ? gap : 0;
        readings.Add(StickMeasure.InnerDeadZone, part, [.. zones.Select(zone => zone.HalfWidth)], Name, zones.Any(zone => zone.Jumps) ? gap / 2 : EdgeFromTwo * rounding, Math.Max(axis.Step, threshold), hidden: hidden);
        var ends = units.Select(unit => StaircaseEdge.Saturation(levels, unit, threshold)).ToList();
        readings.Add(StickMeasure.OuterSaturation, part, [.. ends.Select(end => end.HalfWidth)], Name, ends.Any(end => end.Jumps) ? gap / 2 : EdgeFromTwo * rounding, 1 + axis.Step + threshold, (levels[^1] - levels[0]) / 2);
    }
}
