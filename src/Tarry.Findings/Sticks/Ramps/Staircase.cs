using Tarry.Findings.Sticks.Recordings;
using Tarry.Statistics.Descriptives;

namespace Tarry.Findings.Sticks.Ramps;

/// <summary>A sweep in few levels, each held: the mean position at each, in two halves of the hold.</summary>
internal sealed class Staircase
{
    // The answer to a change of level is over by then.
    private const double Settling = 0.3;
    private const int FewestPositions = 8;
    private const int MostLevels = 512;

    private Staircase(double[] levels, double[][] halves, double noise, double positionNoise, double variance) =>
        (Levels, Halves, Noise, PositionNoise, Variance) = (levels, halves, noise, positionNoise, variance);

    /// <summary>The levels, ascending, in per cent.</summary>
    public double[] Levels { get; }

    /// <summary>For either half of the holds, the mean position at each level.</summary>
    public double[][] Halves { get; }

    /// <summary>The standard deviation of a mean position.</summary>
    public double Noise { get; }

    /// <summary>The standard deviation of a single position's noise.</summary>
    public double PositionNoise { get; }

    /// <summary>The mean variance of the positions within a hold, rounding in it.</summary>
    public double Variance { get; }

    /// <summary>The staircase of a stretch; null where levels are not held.</summary>
    public static Staircase? Of(AxisRecording axis, int from, int to)
    {
        var (levels, first, second, variance) = (new List<double>(), new List<double>(), new List<double>(), 0.0);
        for (var i = from; i <= to;)
        {
            var next = i + 1;
            while (next <= to && axis.LevelPercent[next] == axis.LevelPercent[i])
            {
                next++;
            }

            var start = i + (int)(Settling * (next - i));
            if (next - start < FewestPositions || levels.Count == MostLevels)
            {
                return null;
            }

            var middle = (start + next) / 2;
            levels.Add(axis.LevelPercent[i]);
            first.Add(Mean(axis, start, middle));
            second.Add(Mean(axis, middle, next));
            variance += Moments.Variance(axis.Percent.AsSpan(start, next - start));
            i = next;
        }

        double[][] halves = [[.. first], [.. second]];
        double[] ordered = [.. levels];
        if (ordered[^1] < ordered[0])
        {
            Array.Reverse(ordered);
            Array.Reverse(halves[0]);
            Array.Reverse(halves[1]);
        }

        var squares = halves[0].Zip(halves[1], (a, b) => (a - b) * (a - b) / 2).Average();
        return new Staircase(ordered, halves, Math.Sqrt(squares), PassNoise.Of(axis.Percent.AsSpan(from, to - from + 1)), variance / levels.Count);
    }

    private static double Mean(AxisRecording axis, int from, int to)
    {
        var sum = 0.0;
        for (var i = from; i < to; i++)
        {
            sum += axis.Percent[i];
        }

        return sum / (to - from);
    }
}
