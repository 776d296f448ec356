using Tarry.Statistics.Lines;

namespace Tarry.Statistics.Alignment;

/// <summary>Finds the relation of two clocks from presses on the one and answers on the other, or says why there is none.</summary>
/// <remarks>
/// Stretches of 40 presses: the offset at which most of them have an answer within a window, where it is clearly the best. A straight line through these offsets (the median of the
/// slopes between all pairs: Theil 1950, Sen 1968) relates the clocks roughly. Under that relation the differences of all presses to the answers within ten seconds are
/// looked at again: the window must hold most presses, and no other window more than <see cref="MostRivalShare"/> of as many, so that presses at regular
/// intervals are refused. Then least squares over the pairs in the window. No published source for the whole; it assumes that latencies differ by less than the window
/// from press to press, but for a late tail.
/// </remarks>
public static class AlignmentSearch
{
    /// <summary>With fewer presses nothing is sought.</summary>
    public const int FewestPresses = 30;

    /// <summary>Two clocks differ by no more: a hundred parts per million is a poor crystal, some thousands a resonator.</summary>
    public const double GreatestRatePpm = 5_000;

    /// <summary>Most presses are answered, or it is another recording.</summary>
    public const double LeastMatchedShare = 0.7;

    /// <summary>Another relation that explains more of what the best one explains makes it doubtful.</summary>
    public const double MostRivalShare = 0.7;

    private const int StretchPresses = 40;
    private const int Stretches = 15;
    private const double NearSeconds = 10;

    /// <summary>Looks for it.</summary>
    /// <param name="presses">Times of presses on their clock, ascending, in seconds.</param>
    /// <param name="answers">Times of answers on theirs, ascending, in seconds.</param>
    /// <param name="windowSeconds">By how much latencies differ from press to press, the late tail left aside.</param>
    /// <exception cref="ArgumentOutOfRangeException">The window is not positive.</exception>
    public static EventAlignment Find(IReadOnlyList<double> presses, IReadOnlyList<double> answers, double windowSeconds = 0.02)
    {
        ArgumentNullException.ThrowIfNull(presses);
        ArgumentNullException.ThrowIfNull(answers);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(windowSeconds);
        if (presses.Count < FewestPresses)
        {
            return EventAlignment.None(AlignmentKind.TooFewPresses, presses.Count);
        }

        var (found, doubtful) = Offsets(presses, answers, windowSeconds);
        if (found.Count == 0)
        {
            return EventAlignment.None(doubtful > 0 ? AlignmentKind.SeveralMatches : AlignmentKind.NoMatch, presses.Count);
        }

        var origin = presses[0];
        var slope = Slope(found);
        var offset = Median([.. found.Select(point => point.Offset - (slope * (point.At - origin)))]);
        var near = Near(presses, answers, press => press + offset + (slope * (press - origin)));
        var (middle, count, rival) = DifferenceWindow.Best(near, presses.Count, windowSeconds);
        return count < LeastMatchedShare * presses.Count ? EventAlignment.None(AlignmentKind.NoMatch, presses.Count)
            : rival > MostRivalShare * count ? EventAlignment.None(AlignmentKind.SeveralMatches, presses.Count)
            : Refined(presses, answers, offset + middle, slope, windowSeconds);
    }

    private static (List<(double At, double Offset)> Found, int Doubtful) Offsets(IReadOnlyList<double> presses, IReadOnlyList<double> answers, double window)
    {
        var length = Math.Min(StretchPresses, presses.Count);
        var count = presses.Count < 2 * length ? 1 : Stretches;
        var (found, doubtful) = (new List<(double, double)>(), 0);
        for (var stretch = 0; stretch < count; stretch++)
        {
            var first = count == 1 ? (presses.Count - length) / 2 : (int)((long)(presses.Count - length) * stretch / (count - 1));
            var differences = new List<(double, int)>(length * answers.Count);
            for (var press = 0; press < length; press++)
            {
                foreach (var answer in answers)
                {
                    differences.Add((answer - presses[first + press], press));
                }
            }

            var (middle, held, rival) = DifferenceWindow.Best(differences, length, window);
            if (held < LeastMatchedShare * length)
            {
                continue;
            }

            if (rival > MostRivalShare * held)
            {
                doubtful++;
            }
            else
            {
                found.Add((presses[first + (length / 2)], middle));
            }
        }

        return (found, doubtful);
    }

    // The median of the slopes between all pairs; those that no two clocks have are of stretches that were found wrongly.
    private static double Slope(List<(double At, double Offset)> points)
    {
        var slopes = new List<double>();
        for (var one = 0; one < points.Count; one++)
        {
            for (var other = one + 1; other < points.Count; other++)
            {
                var slope = (points[other].Offset - points[one].Offset) / (points[other].At - points[one].At);
                if (Math.Abs(slope) <= GreatestRatePpm / 1e6)
                {
                    slopes.Add(slope);
                }
            }
        }

        return slopes.Count == 0 ? 0 : Median(slopes);
    }

    private static List<(double Difference, int Press)> Near(IReadOnlyList<double> presses, IReadOnlyList<double> answers, Func<double, double> onTheirClock)
    {
        var differences = new List<(double, int)>();
        var first = 0;
        for (var press = 0; press < presses.Count; press++)
        {
            var expected = onTheirClock(presses[press]);
            while (first < answers.Count && answers[first] < expected - NearSeconds)
            {
                first++;
            }

            for (var answer = first; answer < answers.Count && answers[answer] <= expected + NearSeconds; answer++)
            {
                differences.Add((answers[answer] - expected, press));
            }
        }

        return differences;
    }

    private static EventAlignment Refined(IReadOnlyList<double> presses, IReadOnlyList<double> answers, double offset, double slope, double window)
    {
        var origin = presses[0];
        var (at, differences) = (new List<double>(), new List<double>());
        var answer = 0;
        for (var press = 0; press < presses.Count; press++)
        {
            var earliest = presses[press] + offset + (slope * (presses[press] - origin)) - window;
            var next = press + 1 < presses.Count ? presses[press + 1] + offset + (slope * (presses[press + 1] - origin)) - window : double.PositiveInfinity;
            while (answer < answers.Count && answers[answer] < earliest)
            {
                answer++;
            }

            // Behind the window a second more: a late answer is an answer, as long as the next press has not come.
            if (answer < answers.Count && answers[answer] < Math.Min(next, earliest + (2 * window) + 1))
            {
                at.Add(presses[press] - origin);
                differences.Add(answers[answer] - presses[press]);
            }
        }

        var prompt = Enumerable.Range(0, at.Count).Where(index => Math.Abs(differences[index] - offset - (slope * at[index])) <= window).ToList();
        var line = StraightLine.Fit([.. prompt.Select(index => at[index])], [.. prompt.Select(index => differences[index])]);
        var relative = differences.Select((difference, index) => difference - line.At(at[index])).ToList();
        var median = Median([.. relative]);
        return new EventAlignment(
            AlignmentKind.Found, line.At(0) + median, 1e6 * line.Slope, 1e6 * line.SlopeUncertainty, presses.Count, [.. relative.Select(value => value - median)]);
    }

    private static double Median(List<double> values)
    {
        values.Sort();
        return values.Count % 2 == 1 ? values[values.Count / 2] : (values[(values.Count / 2) - 1] + values[values.Count / 2]) / 2;
    }
}
