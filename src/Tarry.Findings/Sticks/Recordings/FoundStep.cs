namespace Tarry.Findings.Sticks.Recordings;

/// <summary>The step between neighbouring positions that an axis really says, which may be coarser than the one stated.</summary>
/// <param name="Counts">The step, in counts.</param>
/// <param name="Uncertainty">Half the range in which it lies, in counts: the rounding of both ends over the steps between them.</param>
/// <remarks>
/// The distances between neighbouring distinct positions: where nine in ten lie within one count, or a fiftieth, of a multiple of one of
/// their smaller ones (the median, then lower quantiles: of a fast motion without noise most positions are skipped), that is the step,
/// refined over all of them. A step scaled to another range is rounded there, so that its distances differ by a count.
/// </remarks>
internal readonly record struct FoundStep(double Counts, double Uncertainty)
{
    private const int FewestPositions = 32;
    private const double ShareOnGrid = 0.9;
    private const double Nearness = 0.02;
    private const double Recurs = 0.01;
    private const double ShareRecurring = 0.95;
    private const int MostCounts = 1 << 17;
    private static readonly double[] Candidates = [0.5, 0.25, 0.1, 0.02];

    /// <summary>The step that a motion shows, or null where no grid is seen.</summary>
    public static FoundStep? Of(ReadOnlySpan<double> counts)
    {
        var distinct = Distinct(counts, 1).Values;
        return distinct.Count < FewestPositions ? null : Of(distinct, ShareOnGrid);
    }

    /// <summary>The step between the few positions that an axis at rest says again and again; null where it says one alone, many besides, or where they are on no grid.</summary>
    public static FoundStep? AtRest(ReadOnlySpan<double> counts)
    {
        var (recurring, positions) = Distinct(counts, (int)Math.Ceiling(Recurs * counts.Length));
        return recurring.Count < 2 || positions < ShareRecurring * counts.Length ? null : Of(recurring, 1);
    }

    private static FoundStep? Of(List<double> distinct, double shareOnGrid)
    {
        var whole = distinct.TrueForAll(value => value == Math.Floor(value));
        var gaps = distinct.Skip(1).Zip(distinct, (next, value) => next - value).Order().ToArray();
        foreach (var candidate in Candidates)
        {
            var step = gaps[(int)(candidate * (gaps.Length - 1))];
            var tolerance = Math.Max(Nearness * step, whole && step > 4 ? 1.01 : 0);
            var onGrid = gaps.Count(gap => Math.Round(gap / step) >= 1 && Math.Abs(gap - (step * Math.Round(gap / step))) <= tolerance);
            if (onGrid >= shareOnGrid * gaps.Length)
            {
                var steps = gaps.Sum(gap => Math.Max(1, Math.Round(gap / step)));
                return new FoundStep((distinct[^1] - distinct[0]) / steps, (whole && step > 1 ? 1 : 0) / steps);
            }
        }

        return null;
    }

    // In rising order, each said so many times at least; and how many positions those are.
    private static (List<double> Values, int Positions) Distinct(ReadOnlySpan<double> counts, int times)
    {
        var (distinct, positions) = (new List<double>(), 0);
        foreach (var (value, said) in Counted(counts))
        {
            if (said >= times)
            {
                distinct.Add(value);
                positions += said;
            }
        }

        return (distinct, positions);
    }

    // How often each position was said, in rising order: whole counts of a usual range by counting, others by sorting.
    private static List<(double Value, int Said)> Counted(ReadOnlySpan<double> counts)
    {
        var (least, greatest, whole) = (double.PositiveInfinity, double.NegativeInfinity, true);
        foreach (var count in counts)
        {
            (least, greatest, whole) = (Math.Min(least, count), Math.Max(greatest, count), whole && count == Math.Floor(count));
        }

        return whole && greatest - least < MostCounts ? ByCounting(counts, least, greatest) : BySorting(counts);
    }

    private static List<(double Value, int Said)> ByCounting(ReadOnlySpan<double> counts, double least, double greatest)
    {
        var said = new int[counts.IsEmpty ? 0 : (int)(greatest - least) + 1];
        foreach (var count in counts)
        {
            said[(int)(count - least)]++;
        }

        var counted = new List<(double Value, int Said)>();
        for (var i = 0; i < said.Length; i++)
        {
            if (said[i] > 0)
            {
                counted.Add((least + i, said[i]));
            }
        }

        return counted;
    }

    private static List<(double Value, int Said)> BySorting(ReadOnlySpan<double> counts)
    {
        var sorted = counts.ToArray();
        Array.Sort(sorted);
        var counted = new List<(double Value, int Said)>();
        for (var from = 0; from < sorted.Length;)
        {
            var to = from + 1;
            while (to < sorted.Length && sorted[to] == sorted[from])
            {
                to++;
            }

            counted.Add((sorted[from], to - from));
            from = to;
        }

        return counted;
    }
}
