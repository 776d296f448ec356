namespace Tarry.Statistics.Shapes;

/// <summary>One shape with late responses.</summary>
internal sealed class ShapeModel(ILatencyCells cells, ShapeTemplate template) : ILikelihoodModel
{
    public ReadOnlySpan<double> Counts => cells.Counts;

    public void Probabilities(ReadOnlySpan<double> parameters, Span<double> probabilities) =>
        cells.Probabilities(template.Build(parameters[..template.Count]), ShapeTemplate.Share(parameters[^1]), probabilities);
}
