using Tarry.Findings.Sticks.Recordings;

namespace Tarry.Findings.Sticks.Flicks;

/// <summary>Finds the releases of a recording of flicks.</summary>
internal static class Releases
{
    private const double AtGate = 0.6;
    private const double LeastHoldMs = 60;
    private const double NearRest = 0.25;
    private const double Pushed = 0.05;
    private const double Left = 0.9;
    private const double Settled = 0.02;
    private const int FewestAtRest = 6;

    // The way back has died away by the middle of the rest; the next push may begin gently before its end.
    private const double RestFrom = 0.5;
    private const double RestTo = 0.8;

    public static IReadOnlyList<Release> Of(StickRecording recording)
    {
        var releases = new List<Release>();
        if (recording.Count == 0)
        {
            return releases;
        }

        var gate = Gate(recording);
        var holds = Holds(recording, gate);
        for (var hold = 0; hold < holds.Count; hold++)
        {
            var end = hold == holds.Count - 1 ? recording.Count : holds[hold + 1].From;
            if (Of(recording, gate, holds[hold], end) is { } release)
            {
                releases.Add(release);
            }
        }

        return releases;
    }

    // First and last position of each time at the gate; a stick that swings past the other side is there for moments only.
    private static List<(int From, int To)> Holds(StickRecording recording, double gate)
    {
        var holds = new List<(int From, int To)>();
        for (var i = 0; i < recording.Count; i++)
        {
            var from = i;
            while (i < recording.Count && recording.Radius(i) > AtGate * gate)
            {
                i++;
            }

            if (i > from && recording.TimesMs[i - 1] - recording.TimesMs[from] >= LeastHoldMs)
            {
                holds.Add((from, i - 1));
            }
        }

        return holds;
    }

    // How far the stick usually goes: beyond it lie a hundredth of the positions.
    private static double Gate(StickRecording recording)
    {
        var radii = new double[recording.Count];
        for (var i = 0; i < radii.Length; i++)
        {
            radii[i] = recording.Radius(i);
        }

        Array.Sort(radii);
        return radii[(int)(0.99 * (radii.Length - 1))];
    }

    private static Release? Of(StickRecording recording, double gate, (int From, int To) hold, int end)
    {
        var arrived = hold.To + 1;
        while (arrived < end && recording.Radius(arrived) > NearRest * gate)
        {
            arrived++;
        }

        // The next push begins where the stick last lay near the place of its rest.
        var last = end - 1;
        var near = arrived < end ? Median(recording, arrived, end) : (0, 0);
        while (last > arrived && end < recording.Count && Distance(recording, last, near) > Pushed * gate)
        {
            last--;
        }

        var (from, to) = (arrived + (int)((last - arrived) * RestFrom), arrived + (int)((last - arrived) * RestTo));
        if (to - from < FewestAtRest)
        {
            return null;
        }

        var (restX, restY) = (Mean(recording.X.Percent, from, to), Mean(recording.Y.Percent, from, to));
        // The median: the last positions of a hold belong to the way back, and are the more of them the faster the reports.
        var held = Median(recording, hold.From + ((hold.To - hold.From) / 2), hold.To + 1);
        var (x, y) = (held.X - restX, held.Y - restY);
        var way = Math.Sqrt((x * x) + (y * y));
        return way <= 0 ? null : Measured(recording, hold.To, (from, to), (restX, restY), (x / way, y / way), way);
    }

    private static Release Measured(StickRecording recording, int leaving, (int From, int To) rest, (double X, double Y) at, (double X, double Y) direction, double way)
    {
        double Along(int i) => ((recording.X.Percent[i] - at.X) * direction.X) + ((recording.Y.Percent[i] - at.Y) * direction.Y);

        var squares = 0.0;
        for (var i = rest.From; i < rest.To; i++)
        {
            squares += Distance(recording, i, at) * Distance(recording, i, at);
        }

        var variance = squares / (rest.To - rest.From);
        var noise = 3 * Math.Sqrt(variance);
        var first = leaving;
        while (first > 0 && Along(first) < Left * way)
        {
            first--;
        }

        var (lowest, settled) = (first, first);
        for (var i = first; i < rest.To; i++)
        {
            lowest = Along(i) < Along(lowest) ? i : lowest;
            settled = Distance(recording, i, at) > (Settled * way) + noise ? Math.Min(i + 1, rest.To) : settled;
        }

        var step = Math.Max(recording.X.Step, recording.Y.Step);
        var hidden = noise + (2 * step);
        var seen = -Along(lowest);
        var beyond = seen > hidden ? Peak(-Along(lowest - 1), seen, -Along(lowest + 1)) : 0;
        var blur = (noise / 3) + (step / 2) + Math.Max(0, beyond - seen);
        return new Release(direction.X, direction.Y, at.X, at.Y, variance / 2, 100 * beyond / way, 100 * blur / way, 100 * hidden / way, recording.TimesMs[settled] - recording.TimesMs[first]);
    }

    // Between reports the excursion goes on: the height of the parabola through the greatest and its neighbours.
    private static double Peak(double before, double greatest, double after)
    {
        var bend = before - (2 * greatest) + after;
        return bend < 0 ? greatest - ((before - after) * (before - after) / (8 * bend)) : greatest;
    }

    private static double Distance(StickRecording recording, int i, (double X, double Y) from) =>
        Math.Sqrt(Math.Pow(recording.X.Percent[i] - from.X, 2) + Math.Pow(recording.Y.Percent[i] - from.Y, 2));

    private static (double X, double Y) Median(StickRecording recording, int from, int to)
    {
        var (x, y) = (recording.X.Percent[from..to], recording.Y.Percent[from..to]);
        Array.Sort(x);
        Array.Sort(y);
        return (x[x.Length / 2], y[y.Length / 2]);
    }

    private static double Mean(double[] values, int from, int to)
    {
        var sum = 0.0;
        for (var i = from; i < to; i++)
        {
            sum += values[i];
        }

        return sum / (to - from);
    }
}
