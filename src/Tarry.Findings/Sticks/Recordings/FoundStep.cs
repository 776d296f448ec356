namespace Tarry.Findings.Sticks.Recordings;

/// <summary>The step between neighbouring positions that an axis really says, which may be coarser than the one stated.</summary>
/// <param name="Counts">The step, in counts.</param>
/// <param name="Uncertainty">Half the range in which it lies, in counts: the rounding of both ends over the steps between them.</param>
/// <remarks>
/// The distances between neighbouring distinct positions: where nine in ten lie within one count, or a fiftieth, of a multiple of their
/// median, that is the step, refined over all of them. A step scaled to another range is rounded there, so that its distances differ by a count.
/// </remarks>
internal readonly record struct FoundStep(double Counts, double Uncertainty)
{
    private const int FewestPositions = 8;
    private const double ShareOnGrid = 0.9;
    private const double Nearness = 0.02;

    /// <summary>The step, or null where no grid is seen.</summary>
    public static FoundStep? Of(ReadOnlySpan<double> counts)
    {
        var sorted = counts.ToArray();
        Array.Sort(sorted);
        var distinct = Distinct(sorted);
        if (distinct.Count < FewestPositions)
        {
            return null;
        }

        var whole = distinct.TrueForAll(value => value == Math.Floor(value));
        var gaps = distinct.Skip(1).Zip(distinct, (next, value) => next - value).Order().ToArray();
        var step = gaps[(gaps.Length - 1) / 2];
        var tolerance = Math.Max(Nearness * step, whole && step > 4 ? 1.01 : 0);
        var onGrid = gaps.Count(gap => Math.Round(gap / step) >= 1 && Math.Abs(gap - (step * Math.Round(gap / step))) <= tolerance);
        if (onGrid < ShareOnGrid * gaps.Length)
        {
            return null;
        }

        var steps = 0.0;
        foreach (var gap in distinct.Skip(1).Zip(distinct, (next, value) => next - value))
        {
            steps += Math.Max(1, Math.Round(gap / step));
        }

        var rounding = whole && step > 1 ? 1 : 0;
        return new FoundStep((distinct[^1] - distinct[0]) / steps, rounding / steps);
    }

    private static List<double> Distinct(double[] sorted)
    {
        var distinct = new List<double>();
        foreach (var value in sorted)
        {
            if (distinct.Count == 0 || value > distinct[^1])
            {
                distinct.Add(value);
            }
        }

        return distinct;
    }
}
