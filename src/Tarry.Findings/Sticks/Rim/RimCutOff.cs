using Tarry.Findings.Sticks.Recordings;

namespace Tarry.Findings.Sticks.Rim;

/// <summary>Whether a circle is cut off where the range ends: positions stand at an end over more of the turn than a circle touches, and not out to the corners as a square would.</summary>
internal static class RimCutOff
{
    private const double LeastExtent = 25;
    private const double CornerExtent = 88;
    private const double InThisShare = 0.95;
    private const int FewestPositions = 20;

    /// <summary>Over how many degrees the widest side is cut, or null where none is.</summary>
    public static double? Degrees(StickRecording recording, IReadOnlyList<RimTurn> turns)
    {
        double? widest = null;
        foreach (var upper in new[] { true, false })
        {
            foreach (var (along, across) in new[] { (recording.X, recording.Y), (recording.Y, recording.X) })
            {
                if (Extent(along, across, turns, AxisRecording.End(upper)) is { } extent and > LeastExtent and < CornerExtent)
                {
                    widest = Math.Max(widest ?? 0, 2 * Math.Atan2(extent, 100) * 180 / Math.PI);
                }
            }
        }

        return widest;
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
