using Tarry.Findings.Sticks.Measures;
using Tarry.Findings.Sticks.Recordings;

namespace Tarry.Findings.Sticks.Ramps;

/// <summary>Hysteresis, inner dead zone and outer saturation of an axis, from where its positions cross heights.</summary>
/// <remarks>
/// Two heights a1 below a2 above the rest position are crossed at levels T1 and T2; where the axis goes on in a straight line from there, it
/// began to move at (a2 T1 - a1 T2)/(a2 - a1). A crossing is known to half the distance between levels; of the edge, found beyond both of them, that is at most three times as much. Where it jumps over both, T1 = T2 is where it jumped. Likewise below the end.
/// </remarks>
internal static class EdgeReadings
{
    private const double NoiseReaches = 4;
    private const double Steps = 1.5;
    private const double Least = 0.2;
    private const double Middle = 0.1;
    private const double NearCentre = 30;
    private const int Heights = 64;
    private const int Stretches = 8;
    private const double BeyondCrossings = 1.5;
    private const double Plateau = 3;

    public static void Add(SessionReadings readings, StickPart part, PassPairs pairs)
    {
        Hysteresis(readings, part, pairs);
        DeadZone(readings, part, pairs);
        Saturation(readings, part, pairs);
    }

    private static void Hysteresis(SessionReadings readings, StickPart part, PassPairs pairs)
    {
        if (pairs.IsSteadyMotion || pairs.Pairs.Count == 0)
        {
            readings.Refuse(new StickRefusal(pairs.IsSteadyMotion ? StickRefusalReason.NoStimulus : StickRefusalReason.NoPassBack), (StickMeasure.Hysteresis, part));
            return;
        }

        var (low, high) = pairs.Reached;
        var margin = Middle * (high - low);
        double[] heights = [.. Enumerable.Range(0, Heights).Select(index => low + margin + ((high - low - (2 * margin)) * index / (Heights - 1)))];
        var widths = pairs.Pairs.Select(pair =>
        {
            var (up, down) = (pair.Up.Crossings(heights), pair.Down.Crossings(heights));
            // Per cent of level to per cent of position, by the slope between the outermost heights.
            var slope = 2 * (heights[^1] - heights[0]) / (up[^1] - up[0] + down[^1] - down[0]);
            return up.Zip(down, (there, back) => slope * (there - back)).ToArray();
        }).ToList();
        var allowance = Math.Max(pairs.Step, pairs.LevelGap);
        if (widths.Count > 1)
        {
            readings.Add(StickMeasure.Hysteresis, part, [.. widths.Select(width => width.Average())], "passes there and back", pairs.LevelGap / 4, allowance);
        }
        else
        {
            // Of one pass each way its stretches stand for replicates: noise is independent in them.
            readings.Add(StickMeasure.Hysteresis, part, [.. widths[0].Chunk(Heights / Stretches).Take(Stretches).Select(stretch => stretch.Average())], "stretches of one pass there and back", pairs.LevelGap / 4, allowance);
        }
    }

    private static void DeadZone(SessionReadings readings, StickPart part, PassPairs pairs)
    {
        var rest = Rest(pairs);
        var near = Distance(pairs);
        var (left, right) = (EdgeHeights.About(pairs.Step, rest, -near), EdgeHeights.About(pairs.Step, rest, near));
        double[] heights = [left.Far, left.Near, right.Near, right.Far];
        var halves = pairs.Crossings(heights).Select(levels => (right.Edge(levels[2], levels[3]) - left.Edge(levels[1], levels[0])) / 2).ToArray();
        if (pairs.IsSteadyMotion && !Jumps(pairs, rest, near))
        {
            // Time is scaled by what the axis says, and a layer that stretches what is left beyond the dead zone stretches that, too.
            halves = [.. halves.Select(half => half / (1 + (Math.Max(0, half) / 100)))];
        }

        readings.Add(StickMeasure.InnerDeadZone, part, halves, pairs.Name, BeyondCrossings * pairs.LevelGap, Math.Max(pairs.Step, pairs.LevelGap));
    }

    private static void Saturation(SessionReadings readings, StickPart part, PassPairs pairs)
    {
        if (pairs.IsSteadyMotion)
        {
            readings.Refuse(new StickRefusal(StickRefusalReason.NoStimulus), (StickMeasure.OuterSaturation, part));
            return;
        }

        var near = Distance(pairs);
        var low = EdgeHeights.About(pairs.Step, pairs.Passes.Average(pass => pass.Lowest), near);
        var high = EdgeHeights.About(pairs.Step, pairs.Passes.Average(pass => pass.Highest), -near);
        double[] heights = [low.Near, low.Far, high.Far, high.Near];
        var halves = pairs.Crossings(heights).Select(levels => (high.Edge(levels[3], levels[2]) - low.Edge(levels[0], levels[1])) / 2).ToArray();
        var ideal = (pairs.Passes.Min(pass => pass.Levels[^1]) - pairs.Passes.Max(pass => pass.Levels[0])) / 2;
        readings.Add(StickMeasure.OuterSaturation, part, halves, pairs.Name, BeyondCrossings * pairs.LevelGap, 1 + pairs.Step + pairs.LevelGap, ideal);
    }

    private static double Distance(PassPairs pairs) => Math.Max(Math.Max(NoiseReaches * pairs.Noise, Steps * pairs.Step), Least);

    // Whether hardly a position lies between the heights where the axis passes them: it jumps over both.
    private static bool Jumps(PassPairs pairs, double rest, double near)
    {
        var between = pairs.Passes.Average(pass => pass.Positions.ToArray().Count(position => Math.Abs(position - rest) > near && Math.Abs(position - rest) < 2 * near));
        var usual = pairs.Passes.Average(pass => pass.Positions.ToArray().Count(position => Math.Abs(position) is > 40 and < 60)) / 40 * 2 * near;
        return between < 0.2 * usual;
    }

    // The position at which the axis stands while the stick moves, where it does; else the one in the middle. At the ends of a short sweep it is held.
    private static double Rest(PassPairs pairs)
    {
        var (low, high) = pairs.Reached;
        var margin = Middle * (high - low);
        (low, high) = (Math.Max(-NearCentre, low + margin), Math.Min(NearCentre, high - margin));
        var width = pairs.Step > 0 ? pairs.Step : Math.Max(Least, pairs.Noise);
        var counts = new Dictionary<long, int>();
        var all = 0;
        foreach (var pass in pairs.Passes)
        {
            foreach (var position in pass.Positions)
            {
                if (position > low && position < high)
                {
                    var bin = (long)Math.Round((position + 100) / width);
                    counts[bin] = counts.GetValueOrDefault(bin) + 1;
                    all++;
                }
            }
        }

        if (all == 0)
        {
            return 0;
        }

        var (most, count) = counts.MaxBy(entry => entry.Value);
        var expected = all * width / (high - low);
        var middle = pairs.Step > 0 ? (Math.Round(100 / width) * width) - 100 : 0;
        return count > (Plateau * expected) + (4 * Math.Sqrt(expected)) ? (most * width) - 100 : middle;
    }
}
