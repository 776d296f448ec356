using Tarry.Findings.Sticks.Measures;
using Tarry.Findings.Sticks.Ramps;
using Tarry.Findings.Sticks.Recordings;
using Tarry.Statistics.StepResponse;

namespace Tarry.Findings.Sticks.Steps;

/// <summary>How an axis answers jumps of its level; jumps are the replicates.</summary>
internal static class JumpReadings
{
    private const double LeastJump = 10;
    private const double Holds = 1;
    private const double NoiseReaches = 4;
    private const double Overshoots = 2;
    private const int Fewest = 5;
    private const string Name = "jumps";

    private static readonly StickMeasure[] All = [StickMeasure.StepLatency, StickMeasure.StepRise, StickMeasure.StepOvershoot, StickMeasure.StepSettling];

    public static void Add(SessionReadings readings, StickRecording recording, AxisRecording axis, StickPart part)
    {
        var jumps = Jumps(axis.LevelPercent);
        var (found, gaps, hidden) = (new List<StepMoments>(), 0.0, 0.0);
        for (var jump = 0; jump < jumps.Count; jump++)
        {
            var from = jump == 0 ? 0 : (jumps[jump - 1] + jumps[jump]) / 2;
            var to = jump == jumps.Count - 1 ? recording.Count : jumps[jump + 1];
            var (before, after) = (recording.TimesMs[jumps[jump] - 1], recording.TimesMs[jumps[jump]]);
            var noise = NoiseReaches * Math.Max(PassNoise.Of(axis.Percent.AsSpan(from, jumps[jump] - from)), axis.Step / 4);
            if (StepMeasurement.Of(recording.TimesMs.AsSpan(from, to - from), axis.Percent.AsSpan(from, to - from), (before + after) / 2, noise: noise) is { } moments)
            {
                found.Add(moments);
                gaps += after - before;
                hidden = Math.Max(hidden, 100 * noise / Math.Abs(moments.Top - moments.Base));
            }
        }

        if (found.Count < Fewest)
        {
            readings.Refuse(new StickRefusal(StickRefusalReason.TooFewJumps, found.Count, Fewest), [.. All.Select(measure => (measure, part))]);
            return;
        }

        // The jump came somewhere between two positions: where it keeps step with them, no repetition tells where.
        readings.Add(StickMeasure.StepLatency, part, [.. found.Select(step => step.Delay)], Name, resolution: gaps / found.Count / 2);
        readings.Add(StickMeasure.StepRise, part, [.. found.Select(step => step.Transition)], Name, resolution: gaps / found.Count / 2);
        readings.Add(StickMeasure.StepOvershoot, part, [.. found.Select(step => 100 * step.Overshoot)], Name, 100 * axis.Step / Moved(found), Overshoots, hidden: hidden);
        readings.Add(StickMeasure.StepSettling, part, [.. found.Select(step => step.Settling)], Name, resolution: gaps / found.Count / 2);
    }

    /// <summary>Whether the level jumps and holds, rather than sweeps.</summary>
    public static bool Has(AxisRecording axis) => Jumps(axis.LevelPercent).Count > 0;

    private static double Moved(List<StepMoments> steps) => steps.Average(step => Math.Abs(step.Top - step.Base));

    // The first position at each new level, where the level then holds.
    private static List<int> Jumps(double[] levels)
    {
        var jumps = new List<int>();
        for (var i = 1; i < levels.Length - 1; i++)
        {
            if (Math.Abs(levels[i] - levels[i - 1]) >= LeastJump && Math.Abs(levels[i + 1] - levels[i]) <= Holds)
            {
                jumps.Add(i);
            }
        }

        return jumps;
    }
}
