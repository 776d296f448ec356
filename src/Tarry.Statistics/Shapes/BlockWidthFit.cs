namespace Tarry.Statistics.Shapes;

/// <summary>The width of a block, by maximum likelihood, with its profile-likelihood interval at 95 %.</summary>
/// <param name="WidthMs">The width, in milliseconds.</param>
/// <param name="Limits">Its interval, in milliseconds; 0 is inside where no block at all is as likely.</param>
/// <param name="FrameWaitMs">The other wait, common to condition and reference, in milliseconds; 0 where the block stands alone.</param>
/// <param name="NoiseSdMs">The noise of the condition, in milliseconds.</param>
/// <param name="IsApart">Whether the two waits can be told from each other.</param>
public sealed record BlockWidthFit(double WidthMs, ConfidenceLimits Limits, double FrameWaitMs, double NoiseSdMs, bool IsApart)
{
    private const double SmallestReferenceMs = 0.05;
    private const double ReferencePart = 0.2;
    private const double OwnNoisePart = 0.3;
    private const double Apart = 0.6;
    private const double AsLikely = 1.92;

    /// <summary>The width of a condition's report wait, through the chain of the reference.</summary>
    /// <remarks>
    /// One likelihood of both: fixed + Uniform(0, T) + Uniform(0, T2) + Normal(0, s), T2 and s in common, T of the reference as stated. So
    /// the interval holds what is not known of the chain. Where BIC asks for it the condition has noise of its own besides.
    /// </remarks>
    /// <param name="condition">The fits of the condition.</param>
    /// <param name="reference">The fits of the reference.</param>
    /// <param name="referenceReportIntervalMs">The report interval of the reference, if it is stated; else whatever its shape allows.</param>
    public static BlockWidthFit Through(ShapeChoice condition, ShapeChoice reference, double? referenceReportIntervalMs)
    {
        ArgumentNullException.ThrowIfNull(condition);
        ArgumentNullException.ThrowIfNull(reference);
        var own = condition.Of(ShapeFamily.UniformUniformNormal);
        var of = reference.Of(ShapeFamily.UniformUniformNormal);
        var cells = condition.Data.Fine(own.Places);
        var referenceCells = reference.Data.Fine(of.Places);
        var known = referenceReportIntervalMs is { } stated ? Math.Log(stated) : (double?)null;
        int[] held = known is null ? [] : [ChainModel.ReferenceReportWait];

        var plain = new ChainModel(cells, referenceCells, ownNoise: false);
        var fits = Starts(own, of, known).Select(start => FisherScoring.Climb(plain, start, FisherScoring.NearTheTop, held))
            .OrderByDescending(fit => fit.LogLikelihood)
            .ToList();
        ILikelihoodModel model = plain;
        var best = FisherScoring.Climb(plain, fits[0].Parameters, FisherScoring.ToTheTop, held);
        var noisy = new ChainModel(cells, referenceCells, ownNoise: true);
        var start = best.Parameters.ToList();
        start.Insert(ChainModel.OwnNoise, best.Parameters[ChainModel.Noise] + Math.Log(OwnNoisePart));
        var free = FisherScoring.Climb(noisy, start.ToArray(), FisherScoring.ToTheTop, held);
        if (2 * (free.LogLikelihood - best.LogLikelihood) > Math.Log(condition.Data.Trials + reference.Data.Trials))
        {
            (model, best) = (noisy, free);
        }

        var limits = ProfileLikelihood.Of(model, best, ChainModel.ReportWait, held);
        var width = ShapeTemplate.Positive(best.Parameters[ChainModel.ReportWait]);
        var other = fits.Where(fit => best.LogLikelihood - fit.LogLikelihood < AsLikely)
            .Select(fit => ShapeTemplate.Positive(fit.Parameters[ChainModel.ReportWait]));
        return new BlockWidthFit(
            width,
            limits,
            ShapeTemplate.Positive(best.Parameters[ChainModel.FrameWait]),
            NoiseOf(best, model == noisy),
            other.All(rival => rival >= limits.Low && rival <= limits.High));
    }

    /// <summary>The width of the widest block of a condition by its shape alone.</summary>
    /// <remarks>Which wait of the chain it is, the shape does not say. Two waits of about one width are not told apart.</remarks>
    /// <param name="condition">The fits of the condition.</param>
    public static BlockWidthFit Alone(ShapeChoice condition)
    {
        ArgumentNullException.ThrowIfNull(condition);
        var two = condition.Of(ShapeFamily.UniformUniformNormal);
        var one = condition.Of(ShapeFamily.UniformNormal);
        var fit = two.Bic < one.Bic ? two : one;
        var model = new ShapeModel(condition.Data.Fine(fit.Places), fit.Template);
        var best = FisherScoring.Climb(model, fit.Fit.Parameters);
        var isTwo = fit == two;
        var wider = isTwo && best.Parameters[2] > best.Parameters[1] ? 2 : 1;
        var narrower = isTwo ? ShapeTemplate.Positive(best.Parameters[3 - wider]) : 0;
        var width = ShapeTemplate.Positive(best.Parameters[wider]);
        return new BlockWidthFit(width, ProfileLikelihood.Of(model, best, wider), narrower, fit.Shape.NoiseSd, narrower < Apart * width);
    }

    private static double NoiseOf(LikelihoodFit fit, bool ownNoise)
    {
        var noise = ShapeTemplate.Positive(fit.Parameters[ChainModel.Noise]);
        var own = ownNoise ? ShapeTemplate.Positive(fit.Parameters[ChainModel.OwnNoise]) : 0;
        return Math.Sqrt((noise * noise) + (own * own));
    }

    // The two waits of the condition either way round, and the report wait next to nothing.
    private static IEnumerable<double[]> Starts(FittedShape condition, FittedShape reference, double? known)
    {
        var mine = condition.Fit.Parameters;
        var theirs = (double[])reference.Fit.Parameters.Clone();
        var whole = Math.Exp(theirs[1]) + Math.Exp(theirs[2]);
        var report = known ?? Math.Log(Math.Max(SmallestReferenceMs, ReferencePart * whole));
        theirs[2] = Math.Log(Math.Max(SmallestReferenceMs, Math.Sqrt(Math.Max(0, (12 * (reference.Shape.Variance - (theirs[3] > 1 ? 0 : Math.Exp(2 * theirs[3])))) - Math.Exp(2 * report)))));
        foreach (var wait in new[] { mine[1], mine[2], Math.Log(Math.Max(2 * SmallestReferenceMs, 0.1 * Math.Exp(Math.Max(mine[1], mine[2])))) })
        {
            var start = (double[])mine.Clone();
            start[0] = condition.Shape.Mean - (0.5 * (Math.Exp(wait) + Math.Exp(theirs[2])));
            start[1] = wait;
            theirs[0] = reference.Shape.Mean - (0.5 * (Math.Exp(report) + Math.Exp(theirs[2])));
            yield return ChainModel.Start(start, theirs, report, null);
        }
    }
}
