using Tarry.Findings.Conditions;
using Tarry.Findings.Sticks.Measures;
using Tarry.Statistics.Descriptives;
using Tarry.Statistics.Distributions;

namespace Tarry.Findings.Sticks.Ramps;

/// <summary>How far an axis departs from its best straight line, over what it says; in per cent of half the range.</summary>
/// <param name="Part">The axis.</param>
/// <param name="Positions">What the axis says.</param>
/// <param name="Departures">By how much that is too high.</param>
/// <param name="HalfWidths">Half the width of each interval, over passes.</param>
/// <param name="Passes">How many passes, or pairs of passes.</param>
/// <param name="SteadyMotionAssumed">Whether time stands for the level.</param>
public sealed record NonLinearityCurve(StickPart Part, IReadOnlyList<double> Positions, IReadOnlyList<double> Departures, IReadOnlyList<double> HalfWidths, int Passes, bool SteadyMotionAssumed)
{
    internal static NonLinearityCurve Of(StickPart part, double[] heights, IReadOnlyList<double[]> departures, bool steadyMotion)
    {
        var t = StudentDistribution.Quantile(0.5 + (Estimates.Level / 2), departures.Count - 1);
        var columns = Enumerable.Range(0, heights.Length).Select(place => departures.Select(replicate => replicate[place]).ToArray()).ToList();
        return new NonLinearityCurve(
            part,
            heights,
            [.. columns.Select(column => Moments.Mean(column))],
            [.. columns.Select(column => t * Moments.StandardDeviation(column) / Math.Sqrt(column.Length))],
            departures.Count,
            steadyMotion);
    }
}
