using Tarry.Findings.Sticks.Ramps;
using Tarry.Findings.Sticks.Recordings;

namespace Tarry.Findings.Sticks.Rim;

/// <summary>Whether a circle is cut off: its distance is, or positions stand at the end of the range, or through noise at one and the same outermost place, over more of the turn than a circle touches, and not out to the corners as a square would.</summary>
internal static class RimCutOff
{
    private const double LeastExtent = 10;
    private const double CornerExtent = 88;
    private const double Margin = 1.5;
    private const double InThisShare = 0.95;
    private const int FewestPositions = 20;

    /// <summary>Over how many degrees the widest side is cut, or null where none is.</summary>
    public static double? Degrees(StickRecording recording, IReadOnlyList<RimTurn> turns)
    {
        double? widest = RadialCut.Is(recording, turns) ? 360 : null;
        foreach (var (along, across) in new[] { (recording.X, recording.Y), (recording.Y, recording.X) })
        {
            foreach (var end in Ends(along, turns))
            {
                if (Extent(along, across, turns, end) is { } extent and < CornerExtent && extent > Touches(along, turns[0]))
                {
                    widest = Math.Max(widest ?? 0, 2 * Math.Atan2(extent, 100) * 180 / Math.PI);
                }
            }
        }

        return widest;
    }

    // A circle of radius 100 is within d of its end over sqrt(200 d) to either side: half a step, and what noise makes of the place next to it.
    private static double Touches(AxisRecording axis, RimTurn turn)
    {
        var noise = PassNoise.Of(axis.Percent.AsSpan(turn.From, turn.To - turn.From));
        return Math.Max(LeastExtent, Margin * Math.Sqrt(200 * ((axis.Step / 2) + (2 * noise))));
    }

    // Without noise an outermost place is met again by a circle and a square as well.
    private static double[] Ends(AxisRecording axis, IReadOnlyList<RimTurn> turns)
    {
        if (PassNoise.Of(axis.Percent.AsSpan(turns[0].From, turns[0].To - turns[0].From)) <= axis.Step)
        {
            return [AxisRecording.End(upper: false), AxisRecording.End(upper: true)];
        }

        var (least, greatest) = (0.0, 0.0);
        foreach (var turn in turns)
        {
            for (var i = turn.From; i < turn.To; i++)
            {
                (least, greatest) = (Math.Min(least, axis.Percent[i]), Math.Max(greatest, axis.Percent[i]));
            }
        }

        return [least, greatest];
    }

    private static double? Extent(AxisRecording along, AxisRecording across, IReadOnlyList<RimTurn> turns, double end)
    {
        var extents = new List<double>();
        foreach (var turn in turns)
        {
            for (var i = turn.From; i < turn.To; i++)
            {
                if (Math.Abs(along.Percent[i] - end) < 1e-9)
                {
                    extents.Add(Math.Abs(across.Percent[i]));
                }
            }
        }

        extents.Sort();
        return extents.Count < FewestPositions ? null : extents[(int)(InThisShare * (extents.Count - 1))];
    }
}
