using Tarry.Findings.Sticks.Ramps;
using Tarry.Findings.Sticks.Recordings;

namespace Tarry.Findings.Sticks.Rim;

/// <summary>Whether a layer cuts the distance from the middle: noise then moves positions along the circle, and no more across it than rounding does.</summary>
internal static class RadialCut
{
    // What rounding to steps looks like in second differences at most, and from where noise is more than that.
    private const double OfRounding = 0.65;
    private const double Steps = 1.2;

    // Per cent; less may be what a hand does unevenly between three reports.
    private const double LeastNoise = 0.03;
    private const double Nothing = 0.01;

    /// <summary>Whether it is so in every turn, over more than half of it.</summary>
    public static bool Is(StickRecording recording, IReadOnlyList<RimTurn> turns)
    {
        var step = Math.Max(recording.X.Step, recording.Y.Step);
        return turns.All(turn =>
        {
            var (along, across) = Noise(recording, turn);
            return along > Math.Max(LeastNoise, Steps * step) && across < Math.Max(OfRounding * step, Nothing * along);
        });
    }

    private static (double Along, double Across) Noise(StickRecording recording, RimTurn turn)
    {
        var (along, across) = (new double[turn.To - turn.From], new double[turn.To - turn.From]);
        var turned = 0.0;
        for (var i = 0; i < along.Length; i++)
        {
            across[i] = recording.Radius(turn.From + i);
            turned += i == 0 ? 0 : Math.IEEERemainder(recording.Direction(turn.From + i) - recording.Direction(turn.From + i - 1), 2 * Math.PI);
            along[i] = turned;
        }

        return (PassNoise.Of(along) * across.Average(), PassNoise.Of(across));
    }
}
