using Tarry.Findings.Sticks.Measures;
using Tarry.Findings.Sticks.Recordings;

namespace Tarry.Findings.Sticks.Ramps;

/// <summary>What an axis says of the other's motion: the slope of its positions over the other's level, in per cent of the other's own slope; passes are the replicates.</summary>
internal static class CrosstalkReadings
{
    private const double StandsStill = 2;

    /// <summary>Adds the crosstalk from a moved axis to the other.</summary>
    public static void Add(SessionReadings readings, StickRecording recording, AxisRecording moved, AxisRecording other, StickPart part)
    {
        if (!StoodStill(recording, other))
        {
            readings.Refuse(new StickRefusal(StickRefusalReason.OtherAxisUnknown), (StickMeasure.Crosstalk, part));
            return;
        }

        var levels = moved.LevelPercent;
        var slopes = new List<double>();
        foreach (var (from, to) in Stretches.Of(levels, index => !double.IsNaN(levels[index]), 5))
        {
            if (to - from >= 100 && Math.Abs(levels[to] - levels[from]) > 50)
            {
                slopes.Add(100 * Slope(levels, other.Percent, from, to) / Slope(levels, moved.Percent, from, to));
            }
        }

        if (slopes.Count < 2)
        {
            readings.Refuse(new StickRefusal(StickRefusalReason.TooFewPasses, slopes.Count, 2), (StickMeasure.Crosstalk, part));
            return;
        }

        readings.Add(StickMeasure.Crosstalk, part, [.. slopes], "passes", RoundingError.Of(other.Step, Math.Pow(PassNoise.Of(other.Percent), 2)), other.Step / 2);
    }

    // In a substitution an axis without levels has no hand on it; in a motion it goes where the jig goes.
    private static bool StoodStill(StickRecording recording, AxisRecording other)
    {
        var known = other.LevelPercent.Where(level => !double.IsNaN(level)).ToList();
        return known.Count == 0
            ? recording.Setup.Procedure == Studies.Sticks.StickProcedure.Substitution
            : known.Max() - known.Min() < StandsStill;
    }

    private static double Slope(double[] levels, double[] positions, int from, int to)
    {
        var sums = new LineSums();
        for (var i = from; i <= to; i++)
        {
            sums.Add(levels[i], positions[i]);
        }

        return sums.Slope;
    }
}
