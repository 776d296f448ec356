using Tarry.Findings.Sticks.Recordings;

namespace Tarry.Findings.Sticks.Rim;

/// <summary>How far a turn reaches in a direction from the middle of the range: distances within 8 degrees to either side, a parabola to each, met in the middle.</summary>
/// <remarks>
/// A plain mean would cut the corner of a square; a parabola to either side takes a corner as well as a round gate. Where the nearest
/// position of a side is farther than 3 degrees away, turns stick to the direction, as in a dead zone, and reach as far as they say there in the mean.
/// </remarks>
internal static class DirectionalReach
{
    private const double HalfWidth = 8 * Math.PI / 180;
    private const int FewestASide = 4;
    private const double Farthest = 3.0 / 8;
    private const double There = 1.0 / 8;

    /// <summary>The reach, or null where a side holds fewer than four positions, or none is near.</summary>
    public static double? Of(StickRecording recording, RimTurn turn, double direction)
    {
        var (before, after) = (new double[8], new double[8]);
        var (nearestBefore, nearestAfter) = (1.0, 1.0);
        var (there, distance) = (0, 0.0);
        for (var i = turn.From; i < turn.To; i++)
        {
            var apart = recording.Direction(i) - direction;
            var angle = (apart < -Math.PI ? apart + (2 * Math.PI) : apart) / HalfWidth;
            if (Math.Abs(angle) <= 1)
            {
                Gather(angle < 0 ? before : after, angle, recording.Radius(i));
                (nearestBefore, nearestAfter) = angle < 0 ? (Math.Min(nearestBefore, -angle), nearestAfter) : (nearestBefore, Math.Min(nearestAfter, angle));
                if (Math.Abs(angle) < There)
                {
                    there++;
                    distance += recording.Radius(i);
                }
            }
        }

        if (Math.Max(nearestBefore, nearestAfter) > Farthest)
        {
            return there == 0 ? null : distance / there;
        }

        return AtZero(before) is { } left && AtZero(after) is { } right ? (left + right) / 2 : null;
    }

    // Sums of angle^0..4, then of distance times angle^0..2.
    private static void Gather(double[] sums, double angle, double distance)
    {
        var square = angle * angle;
        sums[0]++;
        sums[1] += angle;
        sums[2] += square;
        sums[3] += square * angle;
        sums[4] += square * square;
        sums[5] += distance;
        sums[6] += distance * angle;
        sums[7] += distance * square;
    }

    // The constant of the parabola of least squares, by Cramer's rule.
    private static double? AtZero(double[] s)
    {
        if (s[0] < FewestASide)
        {
            return null;
        }

        var (a, b, c) = ((s[2] * s[4]) - (s[3] * s[3]), (s[1] * s[4]) - (s[2] * s[3]), (s[1] * s[3]) - (s[2] * s[2]));
        var determinant = (s[0] * a) - (s[1] * b) + (s[2] * c);
        return Math.Abs(determinant) > 1e-12 * s[0] * s[2] * s[4] ? ((s[5] * a) - (s[6] * b) + (s[7] * c)) / determinant : null;
    }
}
