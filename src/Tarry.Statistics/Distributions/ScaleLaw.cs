using MathNet.Numerics;

namespace Tarry.Statistics.Distributions;

/// <summary>The law of an estimated standard deviation in units of the true one: chi(v)/sqrt(v).</summary>
internal static class ScaleLaw
{
    private const int Panels = 16;
    private const double Reach = 9;

    /// <summary>The integral of a function over the law, between two scales.</summary>
    /// <param name="function">The function of the scale.</param>
    /// <param name="degreesOfFreedom">v, above 0 and finite.</param>
    /// <param name="from">From which scale, 0 or more.</param>
    /// <param name="to">To which scale; infinite for all.</param>
    public static double Expectation(Func<double, double> function, double degreesOfFreedom, double from, double to)
    {
        Argument.RequirePositive(degreesOfFreedom, nameof(degreesOfFreedom));
        var spread = Reach / Math.Sqrt(2 * degreesOfFreedom);
        var low = Math.Max(from, 1 - spread);
        var high = Math.Min(to, 1 + spread);
        if (!(high > low))
        {
            return 0;
        }

        // The square root of the scale takes the sharp rise at 0 that few degrees of freedom have.
        Span<double> boundaries = stackalloc double[Panels + 1];
        var (start, end) = (Math.Sqrt(low), Math.Sqrt(high));
        for (var i = 0; i <= Panels; i++)
        {
            boundaries[i] = start + ((end - start) * i / Panels);
        }

        var (nodes, weights) = GaussLegendre.OverPanels(boundaries);
        var half = 0.5 * degreesOfFreedom;
        var constant = Math.Log(2) + (half * Math.Log(half)) - SpecialFunctions.GammaLn(half);
        var sum = 0.0;
        for (var i = 0; i < nodes.Length; i++)
        {
            var scale = nodes[i] * nodes[i];
            var density = Math.Exp(constant + ((degreesOfFreedom - 1) * Math.Log(scale)) - (half * scale * scale));
            sum += weights[i] * 2 * nodes[i] * density * function(scale);
        }

        return sum;
    }
}
