using Tarry.Statistics.Distributions;

namespace Tarry.Statistics.Shapes;

/// <summary>Whether latencies agree with a fitted shape.</summary>
/// <param name="ChiSquared">Pearson's sum of (observed - expected)^2 / expected over the cells.</param>
/// <param name="DegreesOfFreedom">Cells less one less the fitted parameters.</param>
/// <param name="P">The probability of so large a sum if the shape is right.</param>
public sealed record ShapeAgreement(double ChiSquared, int DegreesOfFreedom, double P)
{
    private const int FewestPerCell = 25;
    private const int MostCells = 40;

    /// <summary>Pearson's chi-squared over cells of about equal probability.</summary>
    /// <remarks>
    /// The parameters are fitted anew to the cells, without which the statistic lies between chi-squared with and without their degrees
    /// of freedom (H. Chernoff, E. L. Lehmann, Ann. Math. Stat. 25, 1954). A late share at its lower limit counts as not fitted.
    /// </remarks>
    /// <param name="choice">The fits.</param>
    /// <param name="fit">The fit to be checked, one of them.</param>
    /// <returns>The agreement; null where too few cells are left.</returns>
    public static ShapeAgreement? Of(ShapeChoice choice, FittedShape fit)
    {
        ArgumentNullException.ThrowIfNull(choice);
        ArgumentNullException.ThrowIfNull(fit);
        var data = choice.Data;
        var cells = MergedCells.Of(data.Sessions, fit, data.FineWidth, Math.Min(MostCells, data.Trials / FewestPerCell));
        var again = FisherScoring.Climb(new ShapeModel(cells, fit.Template), fit.Fit.Parameters);
        var degrees = cells.Counts.Length - 1 - fit.Template.Count - (FisherScoring.IsAtLowerLimit(again) ? 0 : 1);
        if (degrees < 1)
        {
            return null;
        }

        var probabilities = new double[cells.Counts.Length];
        cells.Probabilities(again.Shape(fit.Template), again.LateShare, probabilities);
        double sum = 0;
        for (var i = 0; i < probabilities.Length; i++)
        {
            var expected = data.Trials * probabilities[i];
            var apart = cells.Counts[i] - expected;
            sum += apart * apart / Math.Max(expected, 1e-9);
        }

        return new ShapeAgreement(sum, degrees, ChiSquaredDistribution.UpperTail(sum, degrees));
    }
}
