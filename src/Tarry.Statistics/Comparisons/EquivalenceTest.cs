using Tarry.Statistics.Distributions;

namespace Tarry.Statistics.Comparisons;

/// <summary>
/// Whether a difference lies inside two bounds: two one-sided tests (D. J. Schuirmann, J. Pharmacokinet. Biopharm. 15,
/// 1987). At level a it concludes "inside" exactly when the 1 - 2a interval lies inside the bounds.
/// </summary>
/// <param name="LowerP">The one-sided p of a difference at or below the lower bound.</param>
/// <param name="UpperP">The one-sided p of a difference at or above the upper bound.</param>
public readonly record struct EquivalenceTest(double LowerP, double UpperP)
{
    /// <summary>The p of a difference outside the bounds: the larger of the two.</summary>
    public double P => Math.Max(LowerP, UpperP);

    /// <summary>Tests a difference against bounds in its unit.</summary>
    /// <exception cref="ArgumentException">The lower bound is not below the upper one.</exception>
    public static EquivalenceTest Of(MeanDifference difference, double lowerBound, double upperBound)
    {
        if (!(lowerBound < upperBound))
        {
            throw new ArgumentException($"The lower bound {lowerBound} is not below the upper bound {upperBound}; give -margin and +margin.", nameof(lowerBound));
        }

        return new EquivalenceTest(
            Tail(difference.Difference - lowerBound, difference),
            Tail(upperBound - difference.Difference, difference));
    }

    private static double Tail(double distance, MeanDifference difference) =>
        StudentDistribution.UpperTail(distance == 0 ? 0 : distance / difference.StandardError, difference.DegreesOfFreedom);
}
