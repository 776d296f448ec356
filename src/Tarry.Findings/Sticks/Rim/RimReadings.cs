using Tarry.Findings.Sticks.Measures;
using Tarry.Findings.Sticks.Recordings;
using Tarry.Statistics.Circles;

namespace Tarry.Findings.Sticks.Rim;

/// <summary>Range, circle, axes and hysteresis from slow turns along the gate; turns are the replicates, one each way together where both ways were turned.</summary>
internal static class RimReadings
{
    private const double Diagonal = 0.41421356237309515; // sqrt(2) - 1

    // The fit of hysteresis is of first order; by how much of the width it is off at most on ellipses of 6 % is simulated (StickCoverageTests).
    private const double FirstOrder = 0.006;

    // Reaches along the axes and the diagonals may err to opposite sides.
    private const double MostOfBoth = 1.5;

    private static readonly (StickPart Part, double Angle)[] Directions =
    [
        .. new[] { StickPart.Right, StickPart.UpRight, StickPart.Up, StickPart.UpLeft, StickPart.Left, StickPart.DownLeft, StickPart.Down, StickPart.DownRight }
            .Select((part, index) => (part, index * Math.PI / 4)),
    ];

    private static readonly (StickMeasure, StickPart)[] OfCircle =
    [
        (StickMeasure.CircleRadius, StickPart.Whole),
        (StickMeasure.CircleCentre, StickPart.X),
        (StickMeasure.CircleCentre, StickPart.Y),
        (StickMeasure.RadialDeviation, StickPart.Whole),
        (StickMeasure.MinimumZone, StickPart.Whole),
        (StickMeasure.GainDifference, StickPart.Whole),
        (StickMeasure.NonOrthogonality, StickPart.Whole),
    ];

    private static readonly (StickMeasure, StickPart)[] OfRange =
    [
        .. Directions.Select(direction => (StickMeasure.Reach, direction.Part)),
        (StickMeasure.Squareness, StickPart.Whole),
    ];

    private static readonly (StickMeasure, StickPart)[] OfHysteresis = [(StickMeasure.Hysteresis, StickPart.X), (StickMeasure.Hysteresis, StickPart.Y)];

    /// <summary>Adds what the sweep shows, and returns its units for the rose; null where there is no whole turn.</summary>
    public static RimUnits? Add(SessionReadings readings, StickRecording recording)
    {
        var turns = RimTurns.Of(recording);
        if (turns.Turns.Count == 0)
        {
            readings.Refuse(new StickRefusal(StickRefusalReason.TooFewTurns, turns.DegreesSeen / 360, 2), [.. OfRange, .. OfCircle, .. OfHysteresis]);
            return null;
        }

        var bins = RimProfile.BinsOf(recording, turns.Turns);
        if (bins is null)
        {
            readings.Refuse(new StickRefusal(StickRefusalReason.TooFast, turns.Turns.Average(turn => (double)(turn.To - turn.From)), 72), [.. OfRange, .. OfCircle, .. OfHysteresis]);
            return null;
        }

        var units = RimUnits.Of(recording, turns.Turns, bins.Value);
        var rounding = RimRounding.Of(recording, turns.Turns);
        // Where an axis lags, it falls short by half the width at its ends.
        var lag = units.Pairs.Select(pair => RimHysteresis.Of(pair.CounterClockwise, pair.Clockwise)).OfType<(double X, double Y)>().Select(width => Math.Max(Math.Abs(width.X), Math.Abs(width.Y))).DefaultIfEmpty().Max();
        Range(readings, recording, units, rounding, lag);
        if (RimCutOff.Degrees(recording, turns.Turns) is { } degrees)
        {
            readings.Found.RemoveAll(reading => reading.Measure == StickMeasure.Squareness);
            readings.Refuse(new StickRefusal(StickRefusalReason.CutOff, degrees), [(StickMeasure.Squareness, StickPart.Whole), .. OfCircle, .. OfHysteresis]);
            return units;
        }

        Circle(readings, recording, units, rounding, lag);
        Hysteresis(readings, recording, units, rounding.OfHysteresis);
        return units;
    }

    private static void Range(SessionReadings readings, StickRecording recording, RimUnits units, RimRounding rounding, double lag)
    {
        var reaches = Directions.Select(direction => units.Values(turn => DirectionalReach.Of(recording, turn, direction.Angle))).ToList();
        for (var direction = 0; direction < reaches.Count; direction++)
        {
            readings.Add(StickMeasure.Reach, Directions[direction].Part, reaches[direction], units.Name, rounding.OfReach);
        }

        if (reaches.All(reach => reach.Length == units.Count))
        {
            var relative = 100 / reaches.Average(reach => reach.Average());
            double[] squareness = [.. Enumerable.Range(0, units.Count).Select(unit => Squareness([.. reaches.Select(reach => reach[unit])]))];
            readings.Add(StickMeasure.Squareness, StickPart.Whole, squareness, units.Name, MostOfBoth * rounding.OfReach / Diagonal * relative, (Step(recording) + lag) / Diagonal * relative);
        }
        else
        {
            readings.Refuse(new StickRefusal(StickRefusalReason.TooFast, units.PositionsATurn, 360), (StickMeasure.Squareness, StickPart.Whole));
        }
    }

    // Of any ellipse about the middle the inverse squares of two reaches at a right angle add up to the same (the trace of its matrix), so that it has none.
    private static double Squareness(double[] reaches)
    {
        double Across(int direction) => (reaches[direction] + reaches[direction + 4]) / 2;
        double Inverse(int direction) => 1 / (Across(direction) * Across(direction));
        return 100 * (Math.Sqrt((Inverse(0) + Inverse(2)) / (Inverse(1) + Inverse(3))) - 1) / Diagonal;
    }

    private static void Circle(SessionReadings readings, StickRecording recording, RimUnits units, RimRounding rounding, double lag)
    {
        var step = Step(recording);
        var circles = units.Profiles.Select(profile => GeometricCircle.Fit(profile.X, profile.Y)).ToArray();
        readings.Add(StickMeasure.CircleRadius, StickPart.Whole, [.. circles.Select(circle => circle.Radius)], units.Name, rounding.OfCircle);
        readings.Add(StickMeasure.CircleCentre, StickPart.X, [.. circles.Select(circle => circle.X)], units.Name, rounding.OfCircle);
        readings.Add(StickMeasure.CircleCentre, StickPart.Y, [.. circles.Select(circle => circle.Y)], units.Name, rounding.OfCircle);
        var ellipses = units.Profiles.Select(profile => AxesEllipse.Fit(profile.X, profile.Y)).OfType<AxesEllipse>().ToArray();
        double[] gains = [.. ellipses.Select(ellipse => 100 * ((ellipse.ReachX / ellipse.ReachY) - 1))];
        double[] skews = [.. ellipses.Select(ellipse => ellipse.Skew * 180 / Math.PI)];
        // Amplitudes that fall short by a share change both in proportion.
        var shorter = lag / 2 / circles.Average(circle => circle.Radius);
        readings.Add(StickMeasure.GainDifference, StickPart.Whole, gains, units.Name, (2 * rounding.OfCircle) + (shorter * Size(gains)), step);
        readings.Add(StickMeasure.NonOrthogonality, StickPart.Whole, skews, units.Name, (1.5 * rounding.OfCircle / 100 * 180 / Math.PI) + (shorter * Size(skews)), Math.Atan(step / 100) * 180 / Math.PI);
        if (units.Count < 2)
        {
            readings.Refuse(new StickRefusal(StickRefusalReason.TooFewTurns, units.Count, 2), (StickMeasure.RadialDeviation, StickPart.Whole), (StickMeasure.MinimumZone, StickPart.Whole));
            return;
        }

        var rounded = Math.Sqrt(2) * step;
        var deviations = RadialExtremes.Of(units.Profiles, profile => GeometricCircle.Fit(profile.X, profile.Y));
        var zones = RadialExtremes.Of(units.Profiles, profile => MinimumZone.Fit(profile.X, profile.Y));
        readings.Add(StickMeasure.RadialDeviation, StickPart.Whole, deviations.Values, units.Name, rounding.OfExtremes + deviations.Blunted, rounded);
        readings.Add(StickMeasure.MinimumZone, StickPart.Whole, [.. zones.Values.Zip(deviations.Values, Math.Min)], units.Name, rounding.OfExtremes + zones.Blunted, rounded);
    }

    private static void Hysteresis(SessionReadings readings, StickRecording recording, RimUnits units, double rounding)
    {
        var widths = units.Pairs.Select(pair => RimHysteresis.Of(pair.CounterClockwise, pair.Clockwise)).OfType<(double X, double Y)>().ToArray();
        if (widths.Length == 0)
        {
            readings.Refuse(new StickRefusal(StickRefusalReason.OneWayOnly, units.Pairs.Count, 2), OfHysteresis);
            return;
        }

        readings.Add(StickMeasure.Hysteresis, StickPart.X, [.. widths.Select(width => width.X)], "turns each way", rounding + (FirstOrder * Math.Abs(widths.Average(width => width.X))), recording.X.Step);
        readings.Add(StickMeasure.Hysteresis, StickPart.Y, [.. widths.Select(width => width.Y)], "turns each way", rounding + (FirstOrder * Math.Abs(widths.Average(width => width.Y))), recording.Y.Step);
    }

    private static double Size(double[] values) => values.Length == 0 ? 0 : Math.Abs(values.Average());

    private static double Step(StickRecording recording) => Math.Max(recording.X.Step, recording.Y.Step);
}
