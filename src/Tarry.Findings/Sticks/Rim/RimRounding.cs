using Tarry.Findings.Sticks.Ramps;
using Tarry.Findings.Sticks.Recordings;

namespace Tarry.Findings.Sticks.Rim;

/// <summary>What rounding to steps leaves in a turn, whatever the number of turns.</summary>
/// <param name="OfReach">Half the width of its error in a reach: half a step where noise does not spread it, and what noise does at a corner.</param>
/// <param name="OfCircle">In radius and centre: near its four ends along the axes, over 2 sqrt(2 step/R) each, a circle stays within one step, and errs alike; elsewhere it errs as N independent positions do, every turn again.</param>
/// <param name="OfExtremes">In the peak to valley of a profile: both may be a step's half off.</param>
/// <param name="OfHysteresis">In the width of hysteresis.</param>
internal readonly record struct RimRounding(double OfReach, double OfCircle, double OfExtremes, double OfHysteresis)
{
    private const double Corner = 0.3;
    private const double MostOfSteps = 0.65;
    private const double Radius = 90;

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
            (left * 2 / Math.PI * Math.Sqrt(2 * step / Radius)) + independent,
            2 * left,
            4 * independent);
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
