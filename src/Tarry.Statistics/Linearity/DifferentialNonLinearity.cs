namespace Tarry.Statistics.Linearity;

/// <summary>How far each code is wider or narrower than the mean of all: DNL[k] = (T[k + 1] - T[k])/Q - 1, in code widths (IEEE 1241, 4.4.2).</summary>
/// <remarks>Q = (last transition - first) / (their number - 1). The first and the last code have no width and no DNL. A missing code has -1.</remarks>
public static class DifferentialNonLinearity
{
    /// <summary>The DNL of every code between the first and the last transition.</summary>
    /// <param name="transitions">The transition levels in order, two or more, the last above the first.</param>
    /// <exception cref="ArgumentException">There are too few, or they span nothing.</exception>
    public static double[] Of(ReadOnlySpan<double> transitions)
    {
        var width = MeanWidth(transitions);
        var found = new double[transitions.Length - 1];
        for (var k = 0; k < found.Length; k++)
        {
            found[k] = ((transitions[k + 1] - transitions[k]) / width) - 1;
        }

        return found;
    }

    /// <summary>The mean code width Q, in the unit of the transitions.</summary>
    /// <param name="transitions">The transition levels in order, two or more, the last above the first.</param>
    /// <exception cref="ArgumentException">There are too few, or they span nothing.</exception>
    public static double MeanWidth(ReadOnlySpan<double> transitions)
    {
        Argument.RequireCount(transitions, 2, nameof(transitions));
        Argument.RequireFinite(transitions, nameof(transitions));
        var width = (transitions[^1] - transitions[0]) / (transitions.Length - 1);
        return width > 0 ? width : throw new ArgumentException("The last transition is not above the first; give levels in order.", nameof(transitions));
    }
}
