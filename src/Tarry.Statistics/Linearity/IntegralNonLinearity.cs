namespace Tarry.Statistics.Linearity;

/// <summary>How far the transition levels lie from a straight line, in code widths (IEEE 1241, 4.4.1).</summary>
public static class IntegralNonLinearity
{
    /// <summary>From the line through the first and the last transition (terminal-based): 0 at both; the running sum of the DNL.</summary>
    /// <param name="transitions">The transition levels in order, two or more, the last above the first.</param>
    /// <exception cref="ArgumentException">There are too few, or they span nothing.</exception>
    public static double[] EndPoint(ReadOnlySpan<double> transitions)
    {
        var width = DifferentialNonLinearity.MeanWidth(transitions);
        var found = new double[transitions.Length];
        for (var k = 0; k < found.Length; k++)
        {
            found[k] = ((transitions[k] - transitions[0]) / width) - k;
        }

        return found;
    }

    /// <summary>From the line of least squares through all transitions (independently based), in widths of that line.</summary>
    /// <param name="transitions">The transition levels in order, two or more, the last above the first.</param>
    /// <exception cref="ArgumentException">There are too few, or they span nothing.</exception>
    public static double[] BestFit(ReadOnlySpan<double> transitions)
    {
        DifferentialNonLinearity.MeanWidth(transitions);
        var middle = (transitions.Length - 1) / 2.0;
        double mean = 0, products = 0, squares = 0;
        for (var k = 0; k < transitions.Length; k++)
        {
            mean += transitions[k] / transitions.Length;
            products += (k - middle) * transitions[k];
            squares += (k - middle) * (k - middle);
        }

        var slope = products / squares;
        var found = new double[transitions.Length];
        for (var k = 0; k < found.Length; k++)
        {
            found[k] = (transitions[k] - mean - (slope * (k - middle))) / slope;
        }

        return found;
    }
}
