namespace Tarry.Statistics.Shapes;

/// <summary>A condition and the reference through one chain: the frame wait and the noise are common, the report wait is each one's own.</summary>
internal sealed class ChainModel(ILatencyCells condition, ILatencyCells reference, bool ownNoise) : ILikelihoodModel
{
    public const int Place = 0;
    public const int ReportWait = 1;
    public const int FrameWait = 2;
    public const int Noise = 3;
    public const int ReferencePlace = 4;
    public const int ReferenceReportWait = 5;
    public const int ReferenceLate = 6;
    public const int OwnNoise = 7;

    private readonly double[] counts = [.. condition.Counts, .. reference.Counts];

    public ReadOnlySpan<double> Counts => counts;

    /// <summary>Parameters in order, the condition's late share last.</summary>
    public static double[] Start(double[] condition, double[] reference, double referenceReportWait, double? ownNoise) =>
        [condition[0], condition[1], reference[2], reference[3], reference[0], referenceReportWait, reference[^1], .. ownNoise is { } noise ? new[] { noise } : [], condition[^1]];

    public void Probabilities(ReadOnlySpan<double> parameters, Span<double> probabilities)
    {
        var frame = ShapeTemplate.Positive(parameters[FrameWait]);
        var noise = ShapeTemplate.Positive(parameters[Noise]);
        var own = ownNoise ? ShapeTemplate.Positive(parameters[OwnNoise]) : 0;
        var split = condition.Counts.Length;
        condition.Probabilities(
            new UniformUniformNormalShape(parameters[Place], ShapeTemplate.Positive(parameters[ReportWait]), frame, Math.Sqrt((noise * noise) + (own * own))),
            ShapeTemplate.Share(parameters[^1]),
            probabilities[..split]);
        reference.Probabilities(
            new UniformUniformNormalShape(parameters[ReferencePlace], ShapeTemplate.Positive(parameters[ReferenceReportWait]), frame, noise),
            ShapeTemplate.Share(parameters[ReferenceLate]),
            probabilities[split..]);
    }
}
