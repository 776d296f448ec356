using Tarry.Statistics.Edges;

namespace Tarry.Statistics.Tests.Edges;

public class HighPassFilterTests
{
    private static readonly float[] Samples = [0.5f, 0.25f, -0.5f, 0.125f, 0, 0, 0, 1, 1, 1, 1, -1, 0.75f, 0.5f, 0, 0, 0, 0, 0.25f, 0.25f, 0.125f];

    // SciPy 1.10.1: lfilter(*butter(2, 800, "highpass", fs=96000), samples).
    private static readonly double[] Filtered =
    [
        0.481826381982, 0.205250314918, -0.533954594785, 0.106033558461, -0.022675939645, -0.021682535185, -0.020702723431,
        0.943914639974, 0.873536811156, 0.805873193588, 0.740908908920, -1.248682521864, 0.520727263296, 0.235167245556,
        -0.271546287024, -0.259550087859, -0.247724071293, -0.236087348434, 0.016256024938, 0.009632758899, -0.116999841343,
    ];

    [Theory]
    [InlineData(21)]
    [InlineData(1)]
    [InlineData(3)]
    [InlineData(8)]
    [InlineData(13)]
    public void Apply_InPiecesOfAnyLength_IsTheFilterOfSciPy(int piece)
    {
        var filter = new HighPassFilter(800, 96_000);
        var (filtered, squares) = (new float[Samples.Length], 0.0);
        for (var at = 0; at < Samples.Length; at += piece)
        {
            squares += filter.Apply(Samples.AsSpan(at, Math.Min(piece, Samples.Length - at)), filtered.AsSpan(at));
        }

        for (var index = 0; index < Filtered.Length; index++)
        {
            Assert.Equal(Filtered[index], filtered[index], 1e-7);
        }

        Assert.Equal(Filtered.Sum(value => value * value), squares, 1e-10);
    }
}
