namespace Tarry.Statistics.Censoring;

/// <summary>Finds the masses of greatest likelihood: steps of self-consistency and of iterative convex minorants in turn.</summary>
internal static class SelfConsistency
{
    private const int MostIterations = 5_000;
    private const double Tolerance = 1e-8;

    public static (double[] Masses, bool Converged) Solve(InnermostIntervals intervals)
    {
        var size = intervals.Lows.Count;
        var total = intervals.Covered.Sum(group => group.Count);
        var masses = new double[size];
        Array.Fill(masses, 1.0 / size);
        for (var iteration = 0; iteration < MostIterations; iteration++)
        {
            var gradient = Gradient(intervals, masses);
            if (gradient.Max() <= total * (1 + Tolerance))
            {
                return (masses, true);
            }

            for (var index = 0; index < size; index++)
            {
                masses[index] *= gradient[index] / total;
            }

            masses = ConvexMinorantStep(intervals, masses);
        }

        return (masses, false);
    }

    // Of the log-likelihood by each mass; at the maximum no more than the number of values.
    private static double[] Gradient(InnermostIntervals intervals, double[] masses)
    {
        var cumulative = Cumulative(masses);
        var steps = new double[masses.Length + 1];
        foreach (var (first, last, count) in intervals.Covered)
        {
            var weight = count / Probability(cumulative, first, last);
            steps[first] += weight;
            steps[last + 1] -= weight;
        }

        var gradient = new double[masses.Length];
        var sum = 0.0;
        for (var index = 0; index < gradient.Length; index++)
        {
            gradient[index] = sum += steps[index];
        }

        return gradient;
    }

    private static double[] ConvexMinorantStep(InnermostIntervals intervals, double[] masses)
    {
        var inner = masses.Length - 1;
        if (inner < 1)
        {
            return masses;
        }

        // The cumulative probability behind each interval but the last; slope and curvature of the likelihood by it.
        var cumulative = Cumulative(masses);
        var (slope, curvature) = (new double[inner], new double[inner]);
        foreach (var (first, last, count) in intervals.Covered)
        {
            var probability = Probability(cumulative, first, last);
            if (last < inner)
            {
                slope[last] += count / probability;
                curvature[last] += count / (probability * probability);
            }

            if (first > 0)
            {
                slope[first - 1] -= count / probability;
                curvature[first - 1] += count / (probability * probability);
            }
        }

        var target = new double[inner];
        for (var index = 0; index < inner; index++)
        {
            curvature[index] = Math.Max(curvature[index], 1e-9);
            target[index] = cumulative[index + 1] + (slope[index] / curvature[index]);
        }

        var monotone = IsotonicRegression.Of(target, curvature);
        var before = LogLikelihood(intervals, cumulative);
        for (var part = 1.0; part > 1e-4; part /= 2)
        {
            var trial = (double[])cumulative.Clone();
            for (var index = 0; index < inner; index++)
            {
                trial[index + 1] += part * (Math.Clamp(monotone[index], 0, 1) - cumulative[index + 1]);
            }

            if (LogLikelihood(intervals, trial) > before)
            {
                return [.. Enumerable.Range(0, masses.Length).Select(index => Math.Max(0, trial[index + 1] - trial[index]))];
            }
        }

        return masses;
    }

    private static double LogLikelihood(InnermostIntervals intervals, double[] cumulative)
    {
        var sum = 0.0;
        foreach (var (first, last, count) in intervals.Covered)
        {
            var probability = cumulative[last + 1] - cumulative[first];
            if (probability <= 0)
            {
                return double.NegativeInfinity;
            }

            sum += count * Math.Log(probability);
        }

        return sum;
    }

    private static double Probability(double[] cumulative, int first, int last) => Math.Max(cumulative[last + 1] - cumulative[first], 1e-300);

    private static double[] Cumulative(double[] masses)
    {
        var cumulative = new double[masses.Length + 1];
        for (var index = 0; index < masses.Length; index++)
        {
            cumulative[index + 1] = cumulative[index] + masses[index];
        }

        cumulative[^1] = 1;
        return cumulative;
    }
}
