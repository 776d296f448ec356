namespace Tarry.Statistics.Linearity;

/// <summary>The transition levels of a converter: T[k] is the input at which codes below k and codes from k up are equally likely (IEEE 1241, 4.2; IEEE 1057).</summary>
public static class CodeTransitions
{
    /// <summary>From the histogram of a ramp that spends equal times at equal inputs: in mean code widths, the first transition at 0.</summary>
    /// <param name="counts">How often each code came, in order; the first and last also hold what lies beyond the range, and are not used.</param>
    /// <remarks>T[k + 1] - T[k] = counts[k] / mean of the inner counts (IEEE 1241, ramp histogram).</remarks>
    /// <exception cref="ArgumentException">There are fewer than three codes, or no inner code came.</exception>
    public static double[] FromRampHistogram(ReadOnlySpan<long> counts)
    {
        var mean = 0.0;
        for (var k = 1; k < counts.Length - 1; k++)
        {
            mean += counts[k];
        }

        mean /= counts.Length - 2;
        if (!(mean > 0))
        {
            throw new ArgumentException("No code between the first and the last came; a ramp needs three codes or more.", nameof(counts));
        }

        var transitions = new double[counts.Length - 1];
        for (var k = 1; k < transitions.Length; k++)
        {
            transitions[k] = transitions[k - 1] + (counts[k] / mean);
        }

        return transitions;
    }

    /// <summary>From the histogram of a sine that overdrives the range a little: in amplitudes of the sine about its mean.</summary>
    /// <param name="counts">How often each code came, in order, the ends included.</param>
    /// <remarks>T[k] = -cos(pi C[k - 1] / N), C the running sum of counts (IEEE 1057 and 1241, sine histogram).</remarks>
    /// <exception cref="ArgumentException">There are fewer than two codes, or nothing was counted.</exception>
    public static double[] FromSineHistogram(ReadOnlySpan<long> counts)
    {
        var total = 0L;
        foreach (var count in counts)
        {
            total += count;
        }

        if (counts.Length < 2 || total == 0)
        {
            throw new ArgumentException("A histogram needs two codes and something counted.", nameof(counts));
        }

        var transitions = new double[counts.Length - 1];
        var below = 0L;
        for (var k = 0; k < transitions.Length; k++)
        {
            below += counts[k];
            transitions[k] = -Math.Cos(Math.PI * below / total);
        }

        return transitions;
    }

    /// <summary>From positions at known levels of one sweep.</summary>
    /// <param name="levels">The true level of each position, ascending.</param>
    /// <param name="codes">The whole code that it was given.</param>
    /// <param name="first">The first transition wanted: into this code from those below.</param>
    /// <param name="count">How many transitions.</param>
    /// <remarks>
    /// T[k] = lowest level + integral of P(code below k) over the level, each position standing for half the way to its neighbours: the
    /// level at which the chance is one half wherever noise is symmetric. It needs no fit and takes noise of many codes.
    /// A transition outside the sweep comes out at its end.
    /// </remarks>
    /// <exception cref="ArgumentException">The columns differ in length or hold fewer than two positions.</exception>
    public static double[] FromKnownLevels(ReadOnlySpan<double> levels, ReadOnlySpan<int> codes, int first, int count)
    {
        Argument.RequireCount(levels, 2, nameof(levels));
        Argument.RequireSameLength(levels.Length, codes.Length, nameof(levels), nameof(codes));
        Argument.RequireAtLeast(count, 1, nameof(count), "Ask for one transition or more.");

        // weights[j]: the stretch of level spent at codes that lie below transition first + j, and not below the one before it.
        var weights = new double[count + 1];
        for (var i = 0; i < levels.Length;)
        {
            var next = i + 1;
            while (next < levels.Length && levels[next] <= levels[i])
            {
                next++;
            }

            // Positions at one level share its stretch.
            var from = i == 0 ? levels[0] : (levels[i - 1] + levels[i]) / 2;
            var to = next == levels.Length ? levels[i] : (levels[i] + levels[next]) / 2;
            for (var share = (to - from) / (next - i); i < next; i++)
            {
                weights[Math.Clamp(codes[i] - first + 1, 0, count)] += share;
            }
        }

        var transitions = new double[count];
        var at = levels[0];
        for (var k = 0; k < count; k++)
        {
            at += weights[k];
            transitions[k] = at;
        }

        return transitions;
    }
}
