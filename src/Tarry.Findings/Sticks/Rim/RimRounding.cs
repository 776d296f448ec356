using Tarry.Findings.Sticks.Ramps;
using Tarry.Findings.Sticks.Recordings;

namespace Tarry.Findings.Sticks.Rim;

/// <summary>What rounding to steps leaves in a turn, whatever the number of turns.</summary>
/// <param name="OfReach">Half the width of its error in a reach: half a step where noise does not spread it, and what noise does at a corner.</param>
/// <param name="OfCircle">In radius and centre: near its four ends along the axes, over 2 sqrt(2 step/R) each, a circle stays within one step, and errs alike.</param>
internal readonly record struct RimRounding(double OfReach, double OfCircle)
{
    private const double Corner = 0.3;
    private const double Radius = 90;

    public static RimRounding Of(StickRecording recording, IReadOnlyList<RimTurn> turns)
    {
        var step = Math.Max(recording.X.Step, recording.Y.Step);
        var turn = turns[0];
        // Steps look like noise in second differences: what they can make of it is taken out.
        var seen = Math.Max(Noise(recording.X, turn), Noise(recording.Y, turn));
        var noise = Math.Sqrt(Math.Max(0, (seen * seen) - (step * step / 8)));
        var left = step == 0 ? 0 : Math.Min(step / 2, step / Math.PI * Math.Exp(-2 * Math.PI * Math.PI * noise * noise / (step * step)));
        left = noise < step / 10 ? step / 2 : left;
        return new RimRounding(left + (Corner * noise), left * 2 / Math.PI * Math.Sqrt(2 * step / Radius));
    }

    private static double Noise(AxisRecording axis, RimTurn turn) => PassNoise.Of(axis.Percent.AsSpan(turn.From, turn.To - turn.From));
}
