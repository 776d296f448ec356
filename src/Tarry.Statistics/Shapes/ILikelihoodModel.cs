namespace Tarry.Statistics.Shapes;

/// <summary>Counts in cells, and how probable each cell is under parameters, the logit of a late share last.</summary>
internal interface ILikelihoodModel
{
    ReadOnlySpan<double> Counts { get; }

    void Probabilities(ReadOnlySpan<double> parameters, Span<double> probabilities);
}
