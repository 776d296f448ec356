namespace Tarry.Statistics.Shapes;

/// <summary>A shape fitted to the latencies of several sessions.</summary>
public sealed class FittedShape
{
    internal FittedShape(ShapeTemplate template, LikelihoodFit fit, double[] places, LateRange late, int trials)
    {
        (Template, Fit, Places, Late) = (template, fit, places, late);
        Shape = fit.Shape(template);
        LateShare = fit.LateShare;
        LogLikelihood = fit.LogLikelihood;
        Parameters = template.Count + 1 + (places.Length - 1);
        Bic = (-2 * LogLikelihood) + (Parameters * Math.Log(trials));
    }

    /// <summary>The common shape, where the sessions are on average.</summary>
    public LatencyShape Shape { get; }

    /// <summary>The share of late responses, thought to lie evenly from the median to beyond the latest.</summary>
    public double LateShare { get; }

    /// <summary>The logarithm of the likelihood of the binned latencies.</summary>
    public double LogLikelihood { get; }

    /// <summary>How many parameters were fitted: those of the family, the late share, and a place for every session but one.</summary>
    public int Parameters { get; }

    /// <summary>Bayesian information criterion, -2 ln L + k ln n.</summary>
    public double Bic { get; private set; }

    /// <summary>How much later each session lies than the sessions on average, in milliseconds.</summary>
    public IReadOnlyList<double> PlacesMs => Places;

    /// <summary>The density with the late responses, per millisecond.</summary>
    /// <param name="ms">Where, in milliseconds.</param>
    public double Density(double ms) =>
        ((1 - LateShare) * Shape.Density(ms)) + (ms > Late.From && ms < Late.To ? LateShare / (Late.To - Late.From) : 0);

    internal double[] Places { get; }

    /// <summary>Where late responses are thought to lie.</summary>
    internal LateRange Late { get; }

    internal ShapeTemplate Template { get; }

    internal LikelihoodFit Fit { get; }

    internal FittedShape WithBicShifted(double by)
    {
        var copy = (FittedShape)MemberwiseClone();
        copy.Bic = Bic + by;
        return copy;
    }
}
