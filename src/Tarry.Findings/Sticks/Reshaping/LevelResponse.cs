using Tarry.Findings.Sticks.Measures;
using Tarry.Findings.Sticks.Ramps;
using Tarry.Findings.Sticks.Recordings;

namespace Tarry.Findings.Sticks.Reshaping;

/// <summary>What a condition says at known levels of either axis: half the difference of the two sides, so that an offset is not in it; a row a replicate.</summary>
internal static class LevelResponse
{
    /// <summary>The sizes of level at which both sides are read, per cent: sixteenths, which the substitution of the guide holds.</summary>
    public static readonly double[] Grid = [.. Enumerable.Range(1, 16).Select(index => index * 6.25)];

    /// <summary>The rows of a condition: of each session where there are several, else of each sweep or half-hold; empty where there are no levels.</summary>
    public static IReadOnlyList<double[]> Of(StickCondition condition)
    {
        var sessions = condition.Recordings.Select(Of).Where(rows => rows.Count > 0).ToList();
        return sessions.Count > 1 ? [.. sessions.Select(Mean)] : sessions.Count == 1 ? sessions[0] : [];
    }

    /// <summary>How many sessions the rows rest on.</summary>
    public static int Sessions(StickCondition condition) => condition.Recordings.Count(recording => Of(recording).Count > 0);

    public static double[] Mean(IReadOnlyList<double[]> rows) => [.. Grid.Select((_, place) => rows.Average(row => row[place]))];

    private static List<double[]> Of(StickRecording recording)
    {
        var rows = new List<double[]>();
        foreach (var part in new[] { StickPart.X, StickPart.Y })
        {
            var axis = recording.WithoutChanges(part).Axis(part);
            var sweeps = LevelPasses.Sweeps(axis);
            if (LevelPasses.OfStairs(axis, sweeps) is { Count: > 0 } stairs)
            {
                rows.AddRange(stairs.SelectMany(sweep => sweep.Stairs.Halves.Select(half => Sizes(sweep.Stairs.Levels, half))));
            }
            else
            {
                rows.AddRange(LevelPasses.OfLevels(axis, sweeps).Select(Binned).Select(binned => Sizes(binned.Levels, binned.Positions)));
            }

            if (rows.Count > 0)
            {
                break;
            }
        }

        return rows;
    }

    // Means over a hundredth of the sweep, so that noise does not decide.
    private static (double[] Levels, double[] Positions) Binned(LevelPass pass)
    {
        var bins = Math.Min(200, pass.Count / 4);
        var (levels, positions) = (new double[bins], new double[bins]);
        for (var bin = 0; bin < bins; bin++)
        {
            var (from, to) = (pass.Count * bin / bins, pass.Count * (bin + 1) / bins);
            for (var i = from; i < to; i++)
            {
                levels[bin] += pass.Levels[i] / (to - from);
                positions[bin] += pass.Positions[i] / (to - from);
            }
        }

        return (levels, positions);
    }

    private static double[] Sizes(double[] levels, double[] positions) =>
        [.. Grid.Select(size => (At(levels, positions, size) - At(levels, positions, -size)) / 2)];

    // Straight lines between neighbours, and on beyond the ends as far as the range goes.
    private static double At(double[] levels, double[] positions, double level)
    {
        var next = Array.BinarySearch(levels, level);
        if (next >= 0)
        {
            return positions[next];
        }

        next = ~next;
        next = Math.Clamp(next, 1, levels.Length - 1);
        var share = (level - levels[next - 1]) / (levels[next] - levels[next - 1]);
        return Math.Clamp(positions[next - 1] + (share * (positions[next] - positions[next - 1])), -100, 100);
    }
}
