using MathNet.Numerics;

namespace Tarry.Statistics.Distributions;

/// <summary>Student's t distribution, for any degrees of freedom above 0, fractional or infinite (then the normal).</summary>
public static class StudentDistribution
{
    private const double ManyDegreesOfFreedom = 1e7;

    /// <summary>The probability of a value at or below <paramref name="t"/>.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The degrees of freedom are not above 0.</exception>
    public static double Cdf(double t, double degreesOfFreedom) =>
        t > 0 ? 1 - UpperTail(t, degreesOfFreedom) : UpperTail(-t, degreesOfFreedom);

    /// <summary>The probability of a value above <paramref name="t"/>.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The degrees of freedom are not above 0.</exception>
    public static double UpperTail(double t, double degreesOfFreedom)
    {
        Argument.RequireDegreesOfFreedom(degreesOfFreedom, nameof(degreesOfFreedom));
        if (t < 0)
        {
            return 1 - UpperTail(-t, degreesOfFreedom);
        }

        if (double.IsPositiveInfinity(degreesOfFreedom))
        {
            return NormalDistribution.Cdf(-t);
        }

        if (double.IsPositiveInfinity(t))
        {
            return 0;
        }

        if (degreesOfFreedom > ManyDegreesOfFreedom)
        {
            return NormalDistribution.Cdf(-AsNormal(t, degreesOfFreedom));
        }

        var square = t * t;
        var sum = degreesOfFreedom + square;
        return 0.5 * IncompleteBeta.Of(0.5 * degreesOfFreedom, 0.5, degreesOfFreedom / sum, square / sum);
    }

    /// <summary>The probability of a value at least as far from 0 as <paramref name="t"/>.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The degrees of freedom are not above 0.</exception>
    public static double TwoSidedP(double t, double degreesOfFreedom) => 2 * UpperTail(Math.Abs(t), degreesOfFreedom);

    /// <summary>The value that a share <paramref name="p"/> lies below, to about 13 digits.</summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="p"/> is not strictly between 0 and 1, or the degrees of freedom are not above 0.</exception>
    public static double Quantile(double p, double degreesOfFreedom)
    {
        Argument.RequireLevel(p, nameof(p));
        Argument.RequireDegreesOfFreedom(degreesOfFreedom, nameof(degreesOfFreedom));
        if (double.IsPositiveInfinity(degreesOfFreedom))
        {
            return NormalDistribution.Quantile(p);
        }

        if (p == 0.5)
        {
            return 0;
        }

        // ln tail against ln t is nearly straight for heavy tails and gently curved for light ones.
        var logTail = Math.Log(Math.Min(p, 1 - p));
        var magnitude = Math.Exp(MonotoneRoot.Find(
            u =>
            {
                var t = Math.Exp(u);
                var tail = UpperTail(t, degreesOfFreedom);
                return (Math.Log(tail) - logTail, -Density(t, degreesOfFreedom) * t / tail);
            },
            low: -40,
            high: 2 - (logTail / Math.Min(degreesOfFreedom, 1)),
            increasing: false));
        return p < 0.5 ? -magnitude : magnitude;
    }

    /// <summary>
    /// The normal value of nearly the same tail, (8v + 1)/(8v + 3) sqrt(v ln(1 + t^2/v)) (D. L. Wallace, Ann. Math. Statist.
    /// 30, 1959): its error falls with the square of v, where the incomplete beta function begins to lose digits.
    /// </summary>
    private static double AsNormal(double t, double degreesOfFreedom) =>
        ((8 * degreesOfFreedom) + 1) / ((8 * degreesOfFreedom) + 3)
        * Math.Sqrt(degreesOfFreedom * SpecialFunctions.Log1p(t * t / degreesOfFreedom));

    private static double Density(double t, double degreesOfFreedom)
    {
        var sum = degreesOfFreedom + (t * t);
        var x = degreesOfFreedom / sum;
        var y = t * t / sum;
        return IncompleteBeta.Density(0.5 * degreesOfFreedom, 0.5, x, y) * degreesOfFreedom * t / (sum * sum);
    }
}
