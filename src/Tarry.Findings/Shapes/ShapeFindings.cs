using Tarry.Metrology;
using Tarry.Statistics.Shapes;

namespace Tarry.Findings.Shapes;

/// <summary>From the fits of a condition to its shape finding.</summary>
internal static class ShapeFindings
{
    private const int CurvePoints = 240;
    private const double CurveMargin = 0.1;

    public static ShapeFinding Of(FittedCondition fitted)
    {
        var choice = fitted.Choice;
        var best = choice.Best;
        var agreement = ShapeAgreement.Of(choice, best);
        var places = best.PlacesMs;
        return new ShapeFinding
        {
            Family = best.Shape.Family,
            Parameters = best.Shape.Parameters.ToDictionary(parameter => parameter.Key, parameter => parameter.Value),
            LateShare = best.LateShare,
            Candidates = [.. choice.Candidates.Select(candidate => new ShapeCandidate(candidate.Shape.Family, candidate.Bic, candidate.Parameters))],
            MarginInBic = choice.Margin,
            Decided = choice.Decided,
            Fit = agreement is null ? null : new GoodnessOfFit(agreement.ChiSquared, agreement.DegreesOfFreedom, agreement.P),
            Curve = Curve(best),
            SessionShift = places.Count > 1
                ? LatencyDifference.FromMilliseconds(Math.Sqrt(places.Sum(place => place * place) / (places.Count - 1)))
                : null,
            Trials = fitted.Trials,
            Sessions = fitted.Sessions.Count,
        };
    }

    private static FittedCurve Curve(FittedShape fit)
    {
        var low = fit.Shape.Quantile(1e-4);
        var high = fit.Shape.Quantile(1 - 1e-4);
        var from = low - (CurveMargin * (high - low));
        var step = (1 + (2 * CurveMargin)) * (high - low) / (CurvePoints - 1);
        return new FittedCurve(from, step, [.. Enumerable.Range(0, CurvePoints).Select(i => fit.Density(from + (i * step)))]);
    }
}
