using Tarry.Findings.Sticks.Ramps;
using Tarry.Findings.Sticks.Recordings;

namespace Tarry.Findings.Sticks.Rim;

/// <summary>What rounding to steps leaves in a turn, whatever the number of turns.</summary>
/// <param name="OfReach">Half the width of its error in a reach: half a step where noise does not spread it, and what noise does at a corner.</param>
/// <param name="OfCircle">In radius and centre: what its four ends along the axes leave, where positions err alike; elsewhere they err as N independent ones do, every turn again.</param>
/// <param name="OfExtremes">In the peak to valley of a profile: both may be a step's half off.</param>
/// <param name="OfHysteresis">In the width of hysteresis.</param>
internal readonly record struct RimRounding(double OfReach, double OfCircle, double OfExtremes, double OfHysteresis)
{
    private const double Corner = 0.3;
    private const double MostOfSteps = 0.65;
    private const double Radius = 90;
    private const double Flat = 1.5;

    // Of normal noise about the end of the range half is cut off: the mean lies s/sqrt(2 pi) inside.
    private const double CutNoise = 0.7;

    public static RimRounding Of(StickRecording recording, IReadOnlyList<RimTurn> turns)
    {
        var step = Math.Max(recording.X.Step, recording.Y.Step);
        var turn = turns[0];
        // Steps look like noise in second differences, up to step/(0.6745 sqrt 6); noise beyond that spreads rounding out entirely.
        var seen = Math.Max(Noise(recording.X, turn), Noise(recording.Y, turn));
        var noise = seen > MostOfSteps * step ? seen : 0;
        var left = noise == 0 ? step / 2 : 0;
        var independent = 2 * left / Math.Sqrt(turn.To - turn.From);
        return new RimRounding(
            left + ((Reaches(recording.X, turns) || Reaches(recording.Y, turns) ? CutNoise : Corner) * noise),
            (left * (Ends(recording, recording.X, turn, step, 0) + Ends(recording, recording.Y, turn, step, Math.PI / 2))) + independent,
            2 * left,
            4 * independent);
    }

    // The shares of a turn over which both ends of an axis err alike. A round gate stays within one step over 2 sqrt(2 step/R), where half of the error
    // evens out; where an axis says one position for longer, the gate has a flat side there, all of which is rounded alike.
    private static double Ends(StickRecording recording, AxisRecording axis, RimTurn turn, double step, double angle)
    {
        var round = Math.Sqrt(2 * step / Radius) / Math.PI;
        return new[] { angle, angle + Math.PI }.Select(end => Alike(recording, axis, turn, end)).Sum(alike => alike > Flat * round ? alike : round / 2);
    }

    // The degrees within an eighth of a turn of an end, a position each, at which the axis says what it says there most often, as a share of the turn.
    private static double Alike(StickRecording recording, AxisRecording axis, RimTurn turn, double end)
    {
        var said = new Dictionary<int, double>();
        for (var i = turn.From; i < turn.To; i++)
        {
            var away = Math.IEEERemainder(recording.Direction(i) - end, 2 * Math.PI) * 180 / Math.PI;
            if (Math.Abs(away) < 45)
            {
                said.TryAdd((int)Math.Floor(away), axis.Percent[i]);
            }
        }

        return said.Count == 0 ? 0 : said.Values.CountBy(position => position).Max(entry => entry.Value) / (4.0 * said.Count);
    }

    private static bool Reaches(AxisRecording axis, IReadOnlyList<RimTurn> turns)
    {
        foreach (var turn in turns)
        {
            for (var i = turn.From; i < turn.To; i++)
            {
                if (Math.Abs(axis.Percent[i]) >= AxisRecording.End(upper: true) - 1e-9)
                {
                    return true;
                }
            }
        }

        return false;
    }

    private static double Noise(AxisRecording axis, RimTurn turn) => PassNoise.Of(axis.Percent.AsSpan(turn.From, turn.To - turn.From));
}
