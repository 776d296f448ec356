namespace Tarry.Statistics.Shapes;

/// <summary>The parameters of greatest likelihood, the late share's logit last.</summary>
/// <param name="Parameters">The parameters.</param>
/// <param name="LogLikelihood">The logarithm of the likelihood.</param>
/// <param name="Information">Their information matrix, as the scoring step saw it last.</param>
internal sealed record LikelihoodFit(double[] Parameters, double LogLikelihood, double[,] Information)
{
    public double LateShare => ShapeTemplate.Share(Parameters[^1]);

    public LatencyShape Shape(ShapeTemplate template) => template.Build(Parameters.AsSpan(0, template.Count));
}
