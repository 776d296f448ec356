using Tarry.Findings.Conditions;
using Tarry.Metrology;
using Tarry.Statistics.Comparisons;
using Tarry.Statistics.Descriptives;
using Tarry.Statistics.Distributions;

namespace Tarry.Findings.Play;

/// <summary>Two conditions in one setting, within the sittings that they share, else between.</summary>
internal sealed class HitDifference
{
    private readonly HitEvidence a;
    private readonly HitEvidence b;
    private readonly double[] differences;
    private readonly double withinVariance;

    public HitDifference(PlayCondition a, PlayCondition b, int setting)
    {
        (A, B) = (a, b);
        (this.a, this.b) = (a.Windows[setting], b.Windows[setting]);
        var sittings = this.a.Sittings.Keys.Where(this.b.Sittings.ContainsKey).Order(StringComparer.Ordinal).ToList();
        differences = [.. sittings.Select(sitting => this.a.Sittings[sitting].Share - this.b.Sittings[sitting].Share)];
        withinVariance = sittings.Count == 0 ? 0 : sittings.Average(sitting => this.a.Sittings[sitting].VarianceOfShare + this.b.Sittings[sitting].VarianceOfShare);
    }

    public PlayCondition A { get; }

    public PlayCondition B { get; }

    public bool InPool => A.InPool && B.InPool;

    public double DegreesOfFreedom => Math.Max(0, differences.Length - 1.0);

    public double? Ratio => differences.Length >= 2 && withinVariance > 0 ? Moments.Variance(differences) / withinVariance : null;

    /// <summary>The difference with the method behind it, and whether it can be tested over sittings.</summary>
    /// <param name="paired">The dispersion of within-sitting differences.</param>
    /// <param name="ofA">That of the first condition alone.</param>
    /// <param name="ofB">That of the second.</param>
    public (MeanDifference Difference, string Method, bool Tested)? Evidence(HitDispersion paired, HitDispersion ofA, HitDispersion ofB)
    {
        var flattery = a.Optimism - b.Optimism;
        if (differences.Length >= 2)
        {
            var error = Math.Sqrt(withinVariance * paired.Factor / differences.Length);
            return (new MeanDifference(Moments.Mean(differences) - flattery, WithUnseen(error), paired.DegreesOfFreedom), MethodName.HitsWithinSittings, true);
        }

        if (differences is [var only])
        {
            return (new MeanDifference(only - flattery, WithUnseen(Math.Sqrt(withinVariance)), double.PositiveInfinity), MethodName.HitsWithinOneSitting, false);
        }

        if (A.Sessions.Count < 2 || B.Sessions.Count < 2)
        {
            return null;
        }

        var difference = WelchDifference.OfVariances(
            a.Share - b.Share,
            a.VarianceWithin * ofA.Factor,
            ofA.DegreesOfFreedom,
            b.VarianceWithin * ofB.Factor,
            ofB.DegreesOfFreedom);
        return (difference with { StandardError = WithUnseen(difference.StandardError) }, MethodName.HitsBetweenSittings, true);
    }

    /// <summary>The difference with its interval.</summary>
    public Estimate<ProportionDifference> Estimate(MeanDifference difference, string method)
    {
        var limits = difference.Limits(Estimates.Level);
        return new Estimate<ProportionDifference>(
            Fraction(difference.Difference),
            new(Fraction(limits.Low), Fraction(limits.High)),
            Estimates.Level,
            method,
            A.Presses + B.Presses,
            differences.Length > 0 ? differences.Length : A.Sessions.Count + B.Sessions.Count);
    }

    // Two conditions that hit always differ by nothing that was seen.
    private double WithUnseen(double error) =>
        HitEstimate.Joined(error, HitEstimate.Joined(a.Share * a.Unseen, b.Share * b.Unseen) / NormalDistribution.Quantile(0.975));

    private static ProportionDifference Fraction(double value) => ProportionDifference.FromFraction(Math.Clamp(value, -1, 1));
}
