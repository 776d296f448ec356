using Tarry.Findings.Sticks.Measures;
using Tarry.Findings.Sticks.Recordings;
using Tarry.Statistics.Linearity;

namespace Tarry.Findings.Sticks.Ramps;

/// <summary>How straight an axis is, by transitions at known levels (IEEE 1241).</summary>
internal static class LinearityReadings
{
    // Noise at the ends of a sweep has no counterpart beyond them.
    private const double NoiseReaches = 4;
    private const double StepsFromEnd = 1.5;
    private const double LeastMargin = 0.2;
    private const int FewestForBits = 3;
    private const int MostHeights = 256;
    private const int MostSteps = 4_096;
    private const double PositionsAStep = 8;

    /// <summary>Adds the measures, and returns the curve for a drawing.</summary>
    public static NonLinearityCurve? Add(SessionReadings readings, StickPart part, PassPairs pairs)
    {
        if (pairs.Units.Count < 2)
        {
            readings.Refuse(
                new StickRefusal(StickRefusalReason.TooFewPasses, pairs.Units.Count, 2),
                (StickMeasure.NonLinearityBestFit, part), (StickMeasure.NonLinearityEndPoint, part), (StickMeasure.DifferentialNonLinearity, part));
            return null;
        }

        var heights = Heights(pairs, MostHeights);
        if (heights.Length < 4)
        {
            readings.Refuse(new StickRefusal(StickRefusalReason.NoStep), (StickMeasure.NonLinearityBestFit, part), (StickMeasure.NonLinearityEndPoint, part));
            return null;
        }

        var crossings = pairs.Crossings(heights);
        var best = crossings.Select(levels => Departures(heights, levels, IntegralNonLinearity.BestFit(levels))).ToArray();
        var ends = crossings.Select(levels => Departures(heights, levels, IntegralNonLinearity.EndPoint(levels))).ToArray();
        readings.Add(StickMeasure.NonLinearityBestFit, part, GreatestDeparture.Of(best), pairs.Name, pairs.LevelGap / 2, pairs.Step);
        readings.Add(StickMeasure.NonLinearityEndPoint, part, GreatestDeparture.Of(ends), pairs.Name, pairs.LevelGap / 2, pairs.Step);
        Bits(readings, part, pairs);
        Differential(readings, part, pairs);
        return NonLinearityCurve.Of(part, heights, best, pairs.IsSteadyMotion);
    }

    // Equal numbers of steps apart, so that each lies midway between two positions; of a continuous axis, equally spaced.
    private static double[] Heights(PassPairs pairs, int most)
    {
        var (low, high) = pairs.Reached;
        var margin = Math.Max(Math.Max(NoiseReaches * pairs.Noise, StepsFromEnd * pairs.Step), LeastMargin);
        var (from, to) = (low + margin, high - margin);
        if (pairs.Step == 0)
        {
            return [.. Enumerable.Range(0, most).Select(index => from + ((to - from) * index / (most - 1)))];
        }

        var (first, last) = ((long)Math.Ceiling(((from + 100) / pairs.Step) - 0.5), (long)Math.Floor(((to + 100) / pairs.Step) - 0.5));
        var stride = Math.Max(1, (last - first + most) / most);
        return last <= first ? [] : [.. Enumerable.Range(0, (int)((last - first) / stride) + 1).Select(index => -100 + ((first + (index * stride) + 0.5) * pairs.Step))];
    }

    // Levels are equal numbers of positions apart, and a code width is that many: per cent of half the range, high where the axis says too much.
    private static double[] Departures(double[] heights, double[] levels, double[] inWidths)
    {
        var apart = (heights[^1] - heights[0]) / (heights.Length - 1);
        return [.. inWidths.Select(width => -width * apart)];
    }

    // About the straight line of least squares through positions over levels, rounding and noise in it. Each pass has a line of its own, and two of them tell no scatter worth the name.
    private static void Bits(SessionReadings readings, StickPart part, PassPairs pairs)
    {
        if (pairs.Passes.Count < FewestForBits)
        {
            readings.Refuse(new StickRefusal(StickRefusalReason.TooFewPasses, pairs.Passes.Count, FewestForBits), (StickMeasure.EffectiveBits, part));
            return;
        }

        double[] bits = [.. pairs.Passes.Select(pass => EffectiveBits.FromError(200, Math.Max(PassResidual.Of(pass), 1e-9)))];
        readings.Add(StickMeasure.EffectiveBits, part, bits, pairs.NameOfPasses);
    }

    private static void Differential(SessionReadings readings, StickPart part, PassPairs pairs)
    {
        if (pairs.Step == 0)
        {
            readings.Refuse(new StickRefusal(StickRefusalReason.NoStep), (StickMeasure.DifferentialNonLinearity, part));
            return;
        }

        var (low, high) = pairs.Reached;
        var steps = (high - low) / pairs.Step;
        var each = pairs.Passes.Min(pass => Math.Min(pass.Count / steps, 2 * pairs.Step / Math.Max(pass.LevelGap, 1e-12)));
        if (steps > MostSteps || each < PositionsAStep)
        {
            readings.Refuse(new StickRefusal(StickRefusalReason.TooFewAStep, each, PositionsAStep), (StickMeasure.DifferentialNonLinearity, part));
            return;
        }

        var heights = Heights(pairs, int.MaxValue / 2);
        var departures = pairs.Crossings(heights).Select(levels => DifferentialNonLinearity.Of(levels)).ToArray();
        readings.Add(StickMeasure.DifferentialNonLinearity, part, GreatestDeparture.Of(departures), pairs.Name, allowance: 2 / each);
    }
}
