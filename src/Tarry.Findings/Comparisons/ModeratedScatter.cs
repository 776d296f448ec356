namespace Tarry.Findings.Comparisons;

/// <summary>
/// How the variance behind an interval was drawn towards what the conditions have in common, in the form that lets anyone
/// recompute the interval: variance = <see cref="SharedVarianceMs2"/> + <see cref="OwnWeight"/> s^2, with s the standard
/// deviation of the session values, and the half-width is t sqrt(variance / J) over J sessions.
/// </summary>
/// <param name="SharedVarianceMs2">What the conditions lend, in ms squared; 0 where nothing is borrowed.</param>
/// <param name="OwnWeight">The weight of the own variance; 1 where nothing is borrowed.</param>
/// <param name="DegreesOfFreedom">Of Student's t.</param>
public sealed record ModeratedScatter(double SharedVarianceMs2, double OwnWeight, double DegreesOfFreedom)
{
    /// <summary>The moderated variance.</summary>
    /// <param name="ownVarianceMs2">The variance of the session values, in ms squared.</param>
    public double Variance(double ownVarianceMs2) => SharedVarianceMs2 + (OwnWeight * ownVarianceMs2);

    /// <summary>Nothing is borrowed.</summary>
    internal static ModeratedScatter Own(double degreesOfFreedom) => new(0, 1, degreesOfFreedom);

    /// <summary>Drawn towards a prior: (d s^2 + d0 s0) / (d + d0).</summary>
    internal static ModeratedScatter TowardsPrior(double own, double prior, double priorVariance, double total)
    {
        var weight = double.IsPositiveInfinity(prior) || own == 0 ? 0 : own / (own + prior);
        return new ModeratedScatter((1 - weight) * priorVariance, weight, total);
    }

    /// <summary>Averaged with a pooled variance.</summary>
    internal ModeratedScatter AveragedWith(double pooledVariance) =>
        this with { SharedVarianceMs2 = (SharedVarianceMs2 + pooledVariance) / 2, OwnWeight = OwnWeight / 2 };
}
