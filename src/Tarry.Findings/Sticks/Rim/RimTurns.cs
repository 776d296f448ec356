using Tarry.Findings.Sticks.Recordings;

namespace Tarry.Findings.Sticks.Rim;

/// <summary>The whole turns of a rim sweep: the angle about the middle is followed, and each stretch one way is cut into turns.</summary>
internal sealed class RimTurns
{
    // Inside this share of the usual distance the stick is on its way to the gate or from it.
    private const double OnGate = 0.5;

    // A hand that hesitates goes back a little; noise near the middle is excluded by the distance.
    private const double TurnsBack = Math.PI / 6;

    private RimTurns(IReadOnlyList<RimTurn> turns, double degreesSeen) => (Turns, DegreesSeen) = (turns, degreesSeen);

    public IReadOnlyList<RimTurn> Turns { get; }

    /// <summary>The longest way round without turning back, in degrees.</summary>
    public double DegreesSeen { get; }

    public static RimTurns Of(StickRecording recording)
    {
        var (angles, onGate) = Angles(recording);
        var turns = new List<RimTurn>();
        var longest = 0.0;
        foreach (var (from, to) in Stretches.Of(angles, index => onGate[index], TurnsBack))
        {
            longest = Math.Max(longest, Math.Abs(angles[to] - angles[from]));
            Cut(angles, from, to, turns);
        }

        return new RimTurns(turns, longest * 180 / Math.PI);
    }

    private static (double[] Angles, bool[] OnGate) Angles(StickRecording recording)
    {
        var count = recording.Count;
        var radii = new double[count];
        for (var i = 0; i < count; i++)
        {
            radii[i] = recording.Radius(i);
        }

        var least = OnGate * UsualRadius(radii);
        var (angles, onGate) = (new double[count], new bool[count]);
        var turned = 0.0;
        for (var i = 0; i < count; i++)
        {
            onGate[i] = radii[i] > least;
            var angle = recording.Direction(i);
            if (i > 0)
            {
                var last = angles[i - 1] - turned;
                turned += angle - last > Math.PI ? -2 * Math.PI : angle - last < -Math.PI ? 2 * Math.PI : 0;
            }

            angles[i] = angle + turned;
        }

        return (angles, onGate);
    }

    // The median, of some ten thousand where there are more.
    private static double UsualRadius(double[] radii)
    {
        var stride = Math.Max(1, radii.Length / 10_000);
        double[] some = [.. Enumerable.Range(0, radii.Length / stride).Select(index => radii[index * stride])];
        Array.Sort(some);
        return some.Length == 0 ? 0 : some[some.Length / 2];
    }

    private static void Cut(double[] angles, int from, int to, List<RimTurn> turns)
    {
        var counterClockwise = angles[to] > angles[from];
        var start = from;
        for (var i = from; i <= to; i++)
        {
            if (Math.Abs(angles[i] - angles[start]) >= 2 * Math.PI)
            {
                turns.Add(new RimTurn(start, i, counterClockwise));
                start = i;
            }
        }
    }
}
