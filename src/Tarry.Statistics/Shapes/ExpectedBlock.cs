namespace Tarry.Statistics.Shapes;

/// <summary>How a shape with a report wait of a stated width would fit, beside the best that was found.</summary>
/// <param name="BicBehind">BIC of the expected shape less that of the best.</param>
/// <param name="LargestDistance">The largest distance between its distribution function and that of the best.</param>
public sealed record ExpectedBlock(double BicBehind, double LargestDistance)
{
    private const double LeastNoiseMs = 0.5;
    private const double NoisePart = 0.1;
    private const int Points = 200;

    /// <summary>Fits a block of a stated width, another wait and noise that does not hide the block.</summary>
    /// <param name="choice">The fits.</param>
    /// <param name="widthMs">The stated width, in milliseconds.</param>
    public static ExpectedBlock Of(ShapeChoice choice, double widthMs)
    {
        ArgumentNullException.ThrowIfNull(choice);
        Argument.RequirePositive(widthMs, nameof(widthMs));
        var best = choice.Best;
        var two = choice.Of(ShapeFamily.UniformUniformNormal);
        var model = new ShapeModel(choice.Data.Fine(best.Places), two.Template);
        var fits = new[] { 0.1, 0.5, 1 }.Select(part => Climb(model, two, widthMs, part * Math.Sqrt(12 * two.Shape.Variance))).ToList();
        var fit = fits.MaxBy(found => found.LogLikelihood)!;
        var mostNoise = Math.Log(Math.Max(LeastNoiseMs, NoisePart * widthMs));
        if (fit.Parameters[3] > mostNoise)
        {
            fit.Parameters[3] = mostNoise;
            fit = FisherScoring.Climb(model, fit.Parameters, 1e-3, 1, 3);
        }

        var parameters = best.Parameters - best.Template.Count + two.Template.Count - 1;
        var behind = (-2 * fit.LogLikelihood) + (parameters * Math.Log(choice.Data.Trials)) - best.Bic;
        var expected = fit.Shape(two.Template);
        var distance = Enumerable.Range(1, Points)
            .Select(i => best.Shape.Quantile(i / (Points + 1.0)))
            .Max(x => Math.Abs(((1 - fit.LateShare) * expected.LowerTail(x)) - ((1 - best.LateShare) * best.Shape.LowerTail(x))
                + (fit.LateShare - best.LateShare) * choice.Data.Late.Share(double.NegativeInfinity, x)));
        return new ExpectedBlock(behind, distance);
    }

    private static LikelihoodFit Climb(ShapeModel model, FittedShape two, double widthMs, double otherMs)
    {
        var other = Math.Max(0.05, otherMs);
        var start = (double[])two.Fit.Parameters.Clone();
        start[0] = two.Shape.Mean - (0.5 * (widthMs + other));
        start[1] = Math.Log(widthMs);
        start[2] = Math.Log(other);
        start[3] = Math.Log(Math.Max(0.05, two.Shape.NoiseSd));
        return FisherScoring.Climb(model, start, 1e-3, 1);
    }
}
