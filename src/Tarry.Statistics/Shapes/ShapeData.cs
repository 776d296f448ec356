using Tarry.Statistics.Quantiles;

namespace Tarry.Statistics.Shapes;

/// <summary>The latencies of a condition's sessions, made ready for fits: coarsely binned to find the peak, finely to climb it.</summary>
internal sealed class ShapeData
{
    private const double FineWidthMs = 0.02;
    private const double CoarseParts = 90;
    private const double BinsPerNoise = 5;
    private const double UsualLateLogit = -5;
    private const double NearlyTheTop = 1e-3;
    private const int Rounds = 3;
    private const double SettledMs = 1e-3;

    private readonly double[] roughPlaces;
    private readonly BinnedLatencies coarse;
    private readonly RoughScale rough;
    private SessionAlignment alignment;
    private double fineWidth;

    public ShapeData(IReadOnlyList<SessionLatencies> sessions)
    {
        Sessions = sessions;
        roughPlaces = SessionAlignment.Rough(sessions);
        var pooled = sessions.SelectMany((session, j) => session.SortedMs.Select(value => value - roughPlaces[j])).ToArray();
        Array.Sort(pooled);
        Trials = pooled.Length;
        rough = RoughScale.Of(pooled);
        Late = LateRange.Of(SampleQuantile.Of(pooled, 0.5)!.Value, pooled[^1]);
        fineWidth = Math.Max(FineWidthMs, rough.Width / 2000);
        coarse = Bin(roughPlaces, Math.Max(fineWidth, rough.Width / CoarseParts));
        alignment = new SessionAlignment(sessions, fineWidth);
    }

    public IReadOnlyList<SessionLatencies> Sessions { get; }

    public int Trials { get; }

    public LateRange Late { get; }

    /// <summary>How wide fine bins are, in milliseconds.</summary>
    public double FineWidth => fineWidth;

    /// <summary>The best of several starts on coarse bins, sessions brought together by their trimmed means.</summary>
    public FittedShape Rough(ShapeTemplate template)
    {
        var model = new ShapeModel(coarse, template);
        var fit = template.Starts(rough)
            .Select(start => FisherScoring.Climb(model, [.. start, UsualLateLogit], FisherScoring.NearTheTop))
            .MaxBy(fit => fit.LogLikelihood)!;
        return Fitted(template, FisherScoring.Climb(model, fit.Parameters, NearlyTheTop), roughPlaces);
    }

    /// <summary>Sets the width of the fine bins: a fifth of the noise costs 0.3 % of the information, h^2/(12 s^2).</summary>
    public void BinFor(double noiseSdMs)
    {
        fineWidth = Math.Max(fineWidth, Math.Min(noiseSdMs / BinsPerNoise, rough.Width / CoarseParts));
        alignment = new SessionAlignment(Sessions, fineWidth);
    }

    /// <summary>Places and shape by turns on fine bins, from an earlier fit.</summary>
    public FittedShape Refined(FittedShape from)
    {
        var (fit, places) = (from.Fit, from.Places);
        for (var round = 0; ; round++)
        {
            var next = alignment.Given(fit.Shape(from.Template), fit.LateShare, places);
            var moved = next.Zip(places, (a, b) => Math.Abs(a - b)).Max();
            places = next;
            if (round > 0 && (moved < SettledMs || round == Rounds))
            {
                break;
            }

            fit = FisherScoring.Climb(new ShapeModel(Fine(places), from.Template), fit.Parameters);
        }

        return Fitted(from.Template, fit, places);
    }

    public BinnedLatencies Fine(double[] places) => Bin(places, fineWidth);

    private FittedShape Fitted(ShapeTemplate template, LikelihoodFit fit, double[] places) => new(template, fit, places, Late, Trials);

    private BinnedLatencies Bin(double[] places, double width) => BinnedLatencies.Of(Sessions, places, width, Late);
}
