using Tarry.Findings.Sticks.Recordings;
using Tarry.Statistics.Linearity;

namespace Tarry.Findings.Sticks.Ramps;

/// <summary>One sweep of an axis from end to end: positions over their true levels, both in per cent of half the range.</summary>
internal sealed class LevelPass
{
    private readonly double[] levels;
    private readonly double[] positions;

    private LevelPass(double[] levels, double[] positions, bool upwards, bool isSteadyMotion, double step)
    {
        (this.levels, this.positions, Upwards, IsSteadyMotion, Step) = (levels, positions, upwards, isSteadyMotion, step);
        Noise = PassNoise.Of(positions);
        // Positions of a pass downwards stand in order of time until here.
        Array.Sort(this.levels, this.positions);
        (Lowest, Highest) = (End(false), End(true));
        LevelGap = Gap(this.levels);
    }

    public bool Upwards { get; }

    /// <summary>Whether the levels are times of a motion that is taken as steady, because none were recorded.</summary>
    public bool IsSteadyMotion { get; }

    /// <summary>The step of the axis; 0 where it has none.</summary>
    public double Step { get; }

    public int Count => levels.Length;

    public ReadOnlySpan<double> Levels => levels;

    public ReadOnlySpan<double> Positions => positions;

    /// <summary>The standard deviation of the positions' noise.</summary>
    public double Noise { get; }

    /// <summary>The mean position at the low end of the levels.</summary>
    public double Lowest { get; }

    /// <summary>The mean position at the high end.</summary>
    public double Highest { get; }

    /// <summary>The usual distance between neighbouring levels that differ.</summary>
    public double LevelGap { get; }

    public static LevelPass Of(AxisRecording axis, int from, int to)
    {
        var (levels, positions) = (axis.LevelPercent[from..(to + 1)], axis.Percent[from..(to + 1)]);
        return new LevelPass(levels, positions, axis.LevelPercent[to] > axis.LevelPercent[from], false, axis.Step);
    }

    /// <summary>A pass without known levels: the time, scaled by the slope that positions a quarter of the way to either side of the middle have in common.</summary>
    /// <remarks>The middle itself may be a dead zone, and the ends saturated.</remarks>
    public static LevelPass? Steady(StickRecording recording, AxisRecording axis, int from, int to)
    {
        var (low, high) = (Math.Min(axis.Percent[from], axis.Percent[to]), Math.Max(axis.Percent[from], axis.Percent[to]));
        var (lower, upper) = (new LineSums(), new LineSums());
        var origin = recording.TimesMs[from];
        for (var i = from; i <= to; i++)
        {
            var share = (axis.Percent[i] - low) / (high - low);
            if (share is (> 0.15 and < 0.35) or (> 0.65 and < 0.85))
            {
                (share < 0.5 ? lower : upper).Add(recording.TimesMs[i] - origin, axis.Percent[i]);
            }
        }

        if (lower.Count < 10 || upper.Count < 10 || LineSums.CommonSlope(lower, upper) is not { } slope)
        {
            return null;
        }

        var (time, middle) = ((lower.MeanX + upper.MeanX) / 2, (lower.MeanY + upper.MeanY) / 2);
        var levels = new double[to - from + 1];
        for (var i = 0; i < levels.Length; i++)
        {
            levels[i] = middle + (slope * (recording.TimesMs[from + i] - origin - time));
        }

        return new LevelPass(levels, axis.Percent[from..(to + 1)], slope > 0, true, axis.Step);
    }

    /// <summary>The level at which positions below a height and from it up are equally likely, for each of some heights in rising order.</summary>
    public double[] Crossings(ReadOnlySpan<double> heights)
    {
        var codes = new int[positions.Length];
        for (var i = 0; i < codes.Length; i++)
        {
            var at = heights.BinarySearch(positions[i]);
            codes[i] = at >= 0 ? at + 1 : ~at;
        }

        return CodeTransitions.FromKnownLevels(levels, codes, 1, heights.Length);
    }

    // The straight line of least squares through the last fiftieth of the sweep, where it ends: level where the axis is at its end, rising where it is not.
    private double End(bool upper)
    {
        var some = Math.Min(positions.Length, Math.Max(5, positions.Length / 50));
        var from = upper ? positions.Length - some : 0;
        double l = 0, u = 0, ll = 0, lu = 0;
        var end = levels[upper ? positions.Length - 1 : 0];
        for (var i = from; i < from + some; i++)
        {
            var level = levels[i] - end;
            l += level;
            u += positions[i];
            ll += level * level;
            lu += level * positions[i];
        }

        var spread = (some * ll) - (l * l);
        var slope = spread > 0 ? ((some * lu) - (l * u)) / spread : 0;
        return (u - (slope * l)) / some;
    }

    private static double Gap(double[] sorted)
    {
        var gaps = new List<double>();
        for (var i = 1; i < sorted.Length; i++)
        {
            if (sorted[i] > sorted[i - 1])
            {
                gaps.Add(sorted[i] - sorted[i - 1]);
            }
        }

        gaps.Sort();
        return gaps.Count == 0 ? double.PositiveInfinity : gaps[gaps.Count / 2];
    }
}
