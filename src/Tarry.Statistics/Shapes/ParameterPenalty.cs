namespace Tarry.Statistics.Shapes;

/// <summary>What is known of some parameters from elsewhere: a normal likelihood of their own.</summary>
/// <param name="Parameters">Which parameters.</param>
/// <param name="Values">What they are.</param>
/// <param name="Precision">The inverse of their covariance.</param>
internal sealed record ParameterPenalty(int[] Parameters, double[] Values, double[,] Precision)
{
    /// <summary>Half the squared distance, and its derivatives added to gradient and information where these are given.</summary>
    public double Add(ReadOnlySpan<double> at, double[]? gradient = null, double[,]? information = null)
    {
        double sum = 0;
        for (var a = 0; a < Parameters.Length; a++)
        {
            for (var b = 0; b < Parameters.Length; b++)
            {
                var pull = Precision[a, b] * (at[Parameters[b]] - Values[b]);
                sum += 0.5 * (at[Parameters[a]] - Values[a]) * pull;
                if (gradient is not null && information is not null)
                {
                    gradient[Parameters[a]] -= pull;
                    information[Parameters[a], Parameters[b]] += Precision[a, b];
                }
            }
        }

        return sum;
    }
}
