using MathNet.Numerics.Integration;

namespace Tarry.Statistics.Distributions;

/// <summary>Composite Gauss-Legendre nodes and weights: 16 points a panel.</summary>
internal static class GaussLegendre
{
    private const int Order = 16;

    public static (double[] Nodes, double[] Weights) OverPanels(ReadOnlySpan<double> boundaries)
    {
        var panels = boundaries.Length - 1;
        var nodes = new double[panels * Order];
        var weights = new double[panels * Order];
        for (var panel = 0; panel < panels; panel++)
        {
            var rule = new GaussLegendreRule(boundaries[panel], boundaries[panel + 1], Order);
            for (var i = 0; i < Order; i++)
            {
                nodes[(panel * Order) + i] = rule.GetAbscissa(i);
                weights[(panel * Order) + i] = rule.GetWeight(i);
            }
        }

        return (nodes, weights);
    }
}
