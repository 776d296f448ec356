using Tarry.Statistics.Descriptives;

namespace Tarry.Findings.Conditions;

/// <summary>How many degrees of freedom a variance has that is pooled over conditions which were run in the same sittings.</summary>
/// <remarks>
/// What a sitting does to all of its conditions alike is seen once a sitting, not once a condition. Two-way layout: with C
/// conditions a sitting, J sittings, between-sittings mean square S on J - 1 and residual mean square R on N - C - J + 1
/// degrees of freedom, the pooled variance is S/C + R(1 - 1/C), and its degrees of freedom are Satterthwaite's
/// (F. E. Satterthwaite, Biometrics Bulletin 2, 1946). For uneven layouts C is the mean number of conditions a sitting.
/// </remarks>
internal static class SharedSittings
{
    /// <summary>The degrees of freedom of the variance pooled over conditions.</summary>
    /// <param name="conditions">For each condition its value in every sitting that it was run in, at least two.</param>
    public static double DegreesOfFreedom(IReadOnlyList<IReadOnlyDictionary<string, double>> conditions)
    {
        var deviations = conditions
            .SelectMany(condition =>
            {
                var mean = condition.Values.Average();
                return condition.Select(session => (Sitting: session.Key, Value: session.Value - mean));
            })
            .OrderBy(deviation => deviation.Sitting, StringComparer.Ordinal)
            .GroupBy(deviation => deviation.Sitting)
            .Select(sitting => sitting.Select(deviation => deviation.Value).ToArray())
            .ToList();
        var sessions = deviations.Sum(sitting => sitting.Length);
        var betweenDegrees = deviations.Count - 1.0;
        var residualDegrees = sessions - conditions.Count - deviations.Count + 1.0;
        var all = sessions - (double)conditions.Count;
        if (residualDegrees < 1 || conditions.Count < 2)
        {
            return Math.Max(1, Math.Min(all, betweenDegrees));
        }

        var between = deviations.Sum(sitting => sitting.Length * Math.Pow(Moments.Mean(sitting), 2));
        var residual = Math.Max(0, deviations.Sum(sitting => sitting.Sum(value => value * value)) - between) / residualDegrees;
        var perSitting = sessions / (double)deviations.Count;
        var fromSittings = between / betweenDegrees / perSitting;
        var fromResidual = residual * (1 - (1 / perSitting));
        var total = fromSittings + fromResidual;
        return total == 0
            ? all
            : Math.Clamp(
                total * total / ((fromSittings * fromSittings / betweenDegrees) + (fromResidual * fromResidual / residualDegrees)),
                betweenDegrees,
                all);
    }
}
