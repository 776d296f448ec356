namespace Tarry.Statistics.Shapes;

/// <summary>Maximum likelihood of cell counts by damped scoring.</summary>
/// <remarks>
/// Newton's step with the empirical information sum c (dp/p)(dp/p)' in place of the Hessian, its diagonal enlarged by a factor
/// that grows when a step fails and shrinks when it succeeds (K. Levenberg, Q. Appl. Math. 2, 1944; D. W. Marquardt, J. SIAM 11,
/// 1963). Derivatives by forward differences. From one start it takes about an eighth of the evaluations of a simplex search.
/// </remarks>
internal static class FisherScoring
{
    private const int MostIterations = 60;
    private const double Step = 1e-6;
    private const double LargestMove = 1.5;
    /// <summary>Stops where the logarithm of the likelihood gains less: for the last fit.</summary>
    public const double ToTheTop = 1e-7;

    /// <summary>Stops where the logarithm of the likelihood gains less: to find which peak is the highest.</summary>
    public const double NearTheTop = 0.02;

    private const double SmallestProbability = 1e-15;
    private const double MostDamping = 1e8;
    private const double LeastLogit = -12;
    private const double MostLogit = -0.2;

    /// <summary>Climbs from a start.</summary>
    /// <param name="model">The counts and their probabilities.</param>
    /// <param name="start">Parameters to start from, the late share's logit last.</param>
    /// <param name="leastGain">The gain at which it stops.</param>
    /// <param name="held">Which parameters are held fast, if any.</param>
    public static LikelihoodFit Climb(ILikelihoodModel model, ReadOnlySpan<double> start, double leastGain = ToTheTop, params ReadOnlySpan<int> held)
    {
        var count = start.Length;
        var cellCount = model.Counts.Length;
        var current = start.ToArray();
        var trial = new double[count];
        var probabilities = new double[cellCount];
        var slopes = new double[count][];
        for (var a = 0; a < count; a++)
        {
            slopes[a] = new double[cellCount];
        }

        var shifted = new double[cellCount];
        var value = Value(model, current, probabilities);
        var gradient = new double[count];
        var information = new double[count, count];
        var damping = 1e-3;
        for (var iteration = 0; iteration < MostIterations; iteration++)
        {
            Derivatives(model, current, probabilities, slopes, shifted, gradient, information, held);
            var gain = 0.0;
            while (damping < MostDamping)
            {
                var move = DampedSolution.Of(information, gradient, damping, held, LargestLateMove(current[^1], gradient[^1]));
                for (var a = 0; a < count; a++)
                {
                    trial[a] = current[a] + (a == 0 ? move[a] : Math.Clamp(move[a], -LargestMove, LargestMove));
                }

                trial[^1] = Math.Clamp(trial[^1], LeastLogit, MostLogit);
                var next = Value(model, trial, shifted);
                if (next > value)
                {
                    gain = next - value;
                    value = next;
                    (current, trial) = (trial, current);
                    (probabilities, shifted) = (shifted, probabilities);
                    damping = Math.Max(1e-9, damping / 8);
                    break;
                }

                damping *= 6;
            }

            if (gain < leastGain)
            {
                break;
            }
        }

        return new LikelihoodFit(current, value, information);
    }

    /// <summary>Whether the late share is as good as none.</summary>
    public static bool IsAtLowerLimit(LikelihoodFit fit) => fit.Parameters[^1] <= LeastLogit + 1;

    // A late share at its lower limit stays there: its logarithm would run away.
    private static double LargestLateMove(double logit, double slope) =>
        slope < 0 ? Math.Min(LargestMove, logit - LeastLogit) : LargestMove;

    private static double Value(ILikelihoodModel model, ReadOnlySpan<double> at, double[] probabilities)
    {
        model.Probabilities(at, probabilities);
        var counts = model.Counts;
        double sum = 0;
        for (var i = 0; i < counts.Length; i++)
        {
            sum += counts[i] * Math.Log(Math.Max(SmallestProbability, probabilities[i]));
        }

        return sum;
    }

    private static void Derivatives(
        ILikelihoodModel model,
        double[] at,
        double[] probabilities,
        double[][] slopes,
        double[] shifted,
        double[] gradient,
        double[,] information,
        ReadOnlySpan<int> held)
    {
        var counts = model.Counts;
        for (var a = 0; a < at.Length; a++)
        {
            gradient[a] = 0;
            if (held.Contains(a))
            {
                Array.Clear(slopes[a]);
                continue;
            }

            var kept = at[a];
            at[a] = kept + Step;
            var step = at[a] - kept;
            model.Probabilities(at, shifted);
            at[a] = kept;
            for (var i = 0; i < counts.Length; i++)
            {
                var p = Math.Max(SmallestProbability, probabilities[i]);
                slopes[a][i] = (Math.Max(SmallestProbability, shifted[i]) - p) / (step * p);
                gradient[a] += counts[i] * slopes[a][i];
            }
        }

        for (var a = 0; a < at.Length; a++)
        {
            for (var b = a; b < at.Length; b++)
            {
                double sum = 0;
                for (var i = 0; i < counts.Length; i++)
                {
                    sum += counts[i] * slopes[a][i] * slopes[b][i];
                }

                information[a, b] = information[b, a] = sum;
            }
        }
    }
}
