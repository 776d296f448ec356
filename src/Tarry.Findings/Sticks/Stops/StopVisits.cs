using Tarry.Findings.Sticks.Recordings;

namespace Tarry.Findings.Sticks.Stops;

/// <summary>The visits to each stop: the mean direction of the positions between two changes of the true angle, less that angle.</summary>
internal static class StopVisits
{
    private const int FewestPositions = 5;

    /// <summary>By true angle, the error of each visit in degrees, in order.</summary>
    public static IReadOnlyList<(double Degrees, IReadOnlyList<double> Errors)> Of(StickRecording recording)
    {
        var visits = new List<(double Degrees, double Error)>();
        var angles = recording.AnglesDeg;
        for (var i = 0; i < angles.Length;)
        {
            var next = i + 1;
            while (next < angles.Length && angles[next].Equals(angles[i]))
            {
                next++;
            }

            if (!double.IsNaN(angles[i]) && next - i >= FewestPositions)
            {
                visits.Add((angles[i], Error(recording, i, next)));
            }

            i = next;
        }

        return [.. visits.GroupBy(visit => visit.Degrees).OrderBy(group => group.Key)
            .Select(group => (group.Key, (IReadOnlyList<double>)[.. group.Select(visit => visit.Error)]))];
    }

    private static double Error(StickRecording recording, int from, int to)
    {
        var (x, y) = (0.0, 0.0);
        for (var i = from; i < to; i++)
        {
            x += recording.X.Percent[i];
            y += recording.Y.Percent[i];
        }

        return Math.IEEERemainder((Math.Atan2(y, x) * 180 / Math.PI) - recording.AnglesDeg[from], 360);
    }
}
