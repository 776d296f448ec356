using Tarry.Studies.Sticks;
using static System.FormattableString;

namespace Tarry.Rig.Sticks;

/// <summary>Whether a recording of a stick is good enough for what its procedure is to show: common practice, no published source.</summary>
/// <remarks>A recording that is not accepted is kept all the same; what it lacks is told.</remarks>
public static class StickAcceptance
{
    private const int Sectors = 36;
    private const int SectorPositions = 5;

    /// <summary>What a recording lacks, in words; nothing where it is accepted.</summary>
    public static IReadOnlyList<string> Lacks(StickSession session)
    {
        ArgumentNullException.ThrowIfNull(session);
        var path = new StickPath(session);
        return [.. session.Setup.Procedure switch
        {
            StickProcedure.Rest => Rest(path),
            StickProcedure.FlickRelease => Releases(path),
            StickProcedure.RimSweep => Rim(path),
            StickProcedure.AngleStops => Held(session, 4, path.ChangesOnly ? 5 : 50, "stops"),
            StickProcedure.SlowRamp => Ramp(path),
            _ => Held(session, 9, path.ChangesOnly ? 1 : 20, "levels"),
        }];
    }

    private static IEnumerable<string> Rest(StickPath path)
    {
        if (path.Seconds < 10)
        {
            yield return Invariant($"it lasts {path.Seconds:0.0} s, less than 10 s");
        }

        if (!path.ChangesOnly && path.Count < 500)
        {
            yield return Invariant($"it has {path.Count} positions, fewer than 500");
        }

        if (Math.Max(path.SpanX, path.SpanY) > 0.1)
        {
            yield return Invariant($"the stick moved over {100 * Math.Max(path.SpanX, path.SpanY):0} % of its range: it was touched");
        }
    }

    private static IEnumerable<string> Releases(StickPath path)
    {
        var (out_, inside) = (0.7, 0.3);
        var releases = new List<int>();
        var direction = -1;
        for (var index = 0; index < path.Count; index++)
        {
            if (path.Radius(index) >= out_)
            {
                direction = (int)Math.Floor((path.AngleDeg(index) + 22.5) / 45) % 8;
            }
            else if (path.Radius(index) <= inside && direction >= 0)
            {
                releases.Add(direction);
                direction = -1;
            }
        }

        if (releases.Count < 20)
        {
            yield return Invariant($"{releases.Count} releases were found, fewer than 20");
        }

        if (releases.Distinct().Count() < 4)
        {
            yield return Invariant($"releases came from {releases.Distinct().Count()} of eight directions, fewer than 4");
        }
    }

    private static IEnumerable<string> Rim(StickPath path)
    {
        var outside = Enumerable.Range(0, path.Count).Count(index => path.Radius(index) >= 0.5);
        if (outside < 0.95 * path.Count)
        {
            yield return Invariant($"{100.0 * outside / path.Count:0} % of the positions are beyond half of the way out, fewer than 95 %");
        }

        var turns = new int[2, Sectors];
        var before = path.AngleDeg(0);
        for (var index = 1; index < path.Count; index++)
        {
            var angle = path.AngleDeg(index);
            var change = Math.IEEERemainder(angle - before, 360);
            // A position that only trembles is of no turn, so the direction is that of the last change of a degree.
            if (Math.Abs(change) >= 1)
            {
                before = angle;
                turns[change > 0 ? 0 : 1, (int)(angle / (360.0 / Sectors)) % Sectors]++;
            }
        }

        for (var way = 0; way < 2; way++)
        {
            var missing = Enumerable.Range(0, Sectors).Count(sector => turns[way, sector] < SectorPositions);
            if (missing > 0)
            {
                yield return Invariant($"turning {(way == 0 ? "counter-clockwise" : "clockwise")}, {missing} of {Sectors} sectors of ten degrees have fewer than {SectorPositions} positions");
            }
        }
    }

    private static IEnumerable<string> Ramp(StickPath path)
    {
        if (path.Seconds < 20)
        {
            yield return Invariant($"it lasts {path.Seconds:0.0} s, less than 10 s each way");
        }

        var (along, across) = (Math.Max(path.SpanX, path.SpanY), Math.Min(path.SpanX, path.SpanY));
        if (along < 0.6)
        {
            yield return Invariant($"the axis that moved most spans {100 * along:0} % of its range, less than 60 %");
        }

        if (across > 0.25)
        {
            yield return Invariant($"the other axis moved over {100 * across:0} % of its range, more than 25 %");
        }
    }

    private static IEnumerable<string> Held(StickSession session, int least, int positions, string what)
    {
        var counts = new Dictionary<(double, double), int>();
        for (var index = 0; index < session.Samples.Count && !session.Samples.Stimulus.IsEmpty; index++)
        {
            var at = (session.Samples.Stimulus[index], session.Samples.StimulusY.IsEmpty ? double.NaN : session.Samples.StimulusY[index]);
            if (!double.IsNaN(at.Item1) || !double.IsNaN(at.Item2))
            {
                counts[at] = counts.GetValueOrDefault(at) + 1;
            }
        }

        var enough = counts.Values.Count(count => count >= positions);
        if (enough < least)
        {
            yield return Invariant($"{enough} {what} have {positions} positions or more, fewer than {least}");
        }
    }
}
