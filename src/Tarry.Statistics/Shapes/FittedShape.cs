namespace Tarry.Statistics.Shapes;

/// <summary>A shape fitted to the latencies of several sessions.</summary>
public sealed class FittedShape
{
    private readonly int trials;

    internal FittedShape(ShapeTemplate template, LikelihoodFit fit, double[] places, LateRange late, int trials)
    {
        (Template, Fit, Places, Late) = (template, fit, places, late);
        this.trials = trials;
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

    /// <summary>The 95 % interval of the late share: normal on the logit, and from 0 where the share is at its lower limit.</summary>
    public (double Low, double High) LateShareLimits()
    {
        var last = Fit.Parameters.Length - 1;
        var variance = DampedSolution.Inverse(Fit.Information)[last, last];
        var half = 1.96 * Math.Sqrt(Math.Max(0, variance));
        var logit = Fit.Parameters[last];

        // With no late response seen, three in n are still likely.
        var unseen = 3.0 / trials;
        return FisherScoring.IsAtLowerLimit(Fit) || LateShare < 0.1 / trials
            ? (0, Math.Max(unseen, LateShare))
            : (Math.Min(LateShare, ShapeTemplate.Share(logit - half)), Math.Max(LateShare, ShapeTemplate.Share(Math.Min(0, logit + half))));
    }

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
