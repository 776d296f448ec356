using Tarry.Findings.Sticks.Recordings;

namespace Tarry.Findings.Sticks.Ramps;

/// <summary>Finds the passes of an axis from end to end.</summary>
internal static class LevelPasses
{
    private const double TurnsBack = 5;
    private const double LeastShareOfSpan = 0.7;
    private const double LeastSpan = 20;
    private const double LargestJump = 20;
    private const int FewestPositions = 100;
    private const int FewestLevels = 20;

    /// <summary>First and last position of each sweep over levels that were recorded.</summary>
    public static IReadOnlyList<(int From, int To)> Sweeps(AxisRecording axis)
    {
        var levels = axis.LevelPercent;
        var stretches = Stretches.Of(levels, index => !double.IsNaN(levels[index]), TurnsBack).ToList();
        return [.. Long(levels, stretches).Where(stretch => IsSweep(levels, stretch)).Select(stretch => (Held(levels, stretch.From), stretch.To))];
    }

    /// <summary>The sweeps as staircases, where every level of all of them is held; else empty.</summary>
    public static IReadOnlyList<(Staircase Stairs, bool Upwards)> OfStairs(AxisRecording axis, IReadOnlyList<(int From, int To)> sweeps)
    {
        var stairs = sweeps.Select(sweep => (Stairs: Staircase.Of(axis, sweep.From, sweep.To), Upwards: axis.LevelPercent[sweep.To] > axis.LevelPercent[sweep.From])).ToList();
        return stairs.Exists(sweep => sweep.Stairs is null) ? [] : [.. stairs.Select(sweep => (sweep.Stairs!, sweep.Upwards))];
    }

    /// <summary>The sweeps as passes, position by position.</summary>
    public static IReadOnlyList<LevelPass> OfLevels(AxisRecording axis, IReadOnlyList<(int From, int To)> sweeps) =>
        [.. sweeps.Select(sweep => LevelPass.Of(axis, sweep.From, sweep.To))];

    /// <summary>Passes of a motion without recorded levels, by its own positions.</summary>
    public static IReadOnlyList<LevelPass> OfMotion(StickRecording recording, AxisRecording axis)
    {
        var stretches = Stretches.Of(axis.Percent, _ => true, 4 * TurnsBack).ToList();
        return [.. Long(axis.Percent, stretches).Select(stretch => LevelPass.Steady(recording, axis, stretch.From, stretch.To)).OfType<LevelPass>()];
    }

    private static IEnumerable<(int From, int To)> Long(double[] values, List<(int From, int To)> stretches)
    {
        var longest = stretches.Count == 0 ? 0 : stretches.Max(stretch => Math.Abs(values[stretch.To] - values[stretch.From]));
        return stretches.Where(stretch => stretch.To - stretch.From >= FewestPositions
            && Math.Abs(values[stretch.To] - values[stretch.From]) >= Math.Max(LeastSpan, LeastShareOfSpan * longest));
    }

    // A stretch begins where its first level ends; all of that level belongs to it.
    private static int Held(double[] levels, int from)
    {
        while (from > 0 && levels[from - 1] == levels[from])
        {
            from--;
        }

        return from;
    }

    // Not a jump and a hold.
    private static bool IsSweep(double[] levels, (int From, int To) stretch)
    {
        var (changes, largest) = (0, 0.0);
        for (var i = stretch.From + 1; i <= stretch.To; i++)
        {
            changes += levels[i] == levels[i - 1] ? 0 : 1;
            largest = Math.Max(largest, Math.Abs(levels[i] - levels[i - 1]));
        }

        return changes >= FewestLevels && largest <= LargestJump;
    }
}
