namespace Tarry.Statistics.Uncertainty;

/// <summary>The law of propagation of uncertainty, first order.</summary>
/// <remarks>
/// u^2(y) = sum of c_i c_j u_i u_j r_ij over all pairs (JCGM 100:2008, 5.1.2 equation 10 and 5.2.2 equation 16); of two results
/// of the same inputs, u(y, z) = sum of c_i d_j u_i u_j r_ij (H.2.3, equation H.9). Assumes that the result is as good as
/// straight over the inputs' uncertainties.
/// </remarks>
public static class LawOfPropagation
{
    /// <summary>The combined standard uncertainty of a result whose inputs are independent.</summary>
    /// <param name="components">The inputs.</param>
    public static double Combine(ReadOnlySpan<UncertaintyComponent> components)
    {
        double sum = 0;
        foreach (var component in components)
        {
            sum += component.Contribution * component.Contribution;
        }

        return Math.Sqrt(sum);
    }

    /// <summary>The combined standard uncertainty of a result whose inputs are correlated.</summary>
    /// <param name="components">The inputs.</param>
    /// <param name="correlations">The correlation of each two of them: square, symmetric, ones on the diagonal.</param>
    /// <exception cref="ArgumentException">The correlations do not fit the inputs.</exception>
    public static double Combine(ReadOnlySpan<UncertaintyComponent> components, double[,] correlations)
    {
        var contributions = new double[components.Length];
        for (var i = 0; i < contributions.Length; i++)
        {
            contributions[i] = components[i].Contribution;
        }

        // Rounding can leave the smallest negative number where all cancels.
        return Math.Sqrt(Math.Max(0, Covariance(contributions, contributions, correlations)));
    }

    /// <summary>The covariance of two results of the same inputs.</summary>
    /// <param name="first">The contributions of the inputs to the first result, with their signs.</param>
    /// <param name="second">The contributions of the same inputs to the second.</param>
    /// <param name="correlations">The correlation of each two inputs.</param>
    /// <exception cref="ArgumentException">The sizes do not agree, or a correlation is outside -1 to 1.</exception>
    public static double Covariance(ReadOnlySpan<double> first, ReadOnlySpan<double> second, double[,] correlations)
    {
        ArgumentNullException.ThrowIfNull(correlations);
        if (first.Length != second.Length || correlations.GetLength(0) != first.Length || correlations.GetLength(1) != first.Length)
        {
            throw new ArgumentException(
                $"{first.Length} and {second.Length} contributions need as many rows and columns of correlations, not {correlations.GetLength(0)} x {correlations.GetLength(1)}.",
                nameof(correlations));
        }

        double sum = 0;
        for (var i = 0; i < first.Length; i++)
        {
            for (var j = 0; j < second.Length; j++)
            {
                var correlation = correlations[i, j];
                if (!(Math.Abs(correlation) <= 1))
                {
                    throw new ArgumentException($"The correlation of inputs {i} and {j} is {correlation}; it lies between -1 and 1.", nameof(correlations));
                }

                sum += first[i] * second[j] * correlation;
            }
        }

        return sum;
    }
}
