using Tarry.Statistics.Descriptives;
using Tarry.Statistics.Distributions;

namespace Tarry.Findings.Sticks.Reshaping;

/// <summary>Whether a map has another form than the curve that was fitted to it.</summary>
internal static class MapDeparture
{
    private const double Allowance = 2;

    /// <summary>
    /// The probability that chance alone puts some level as far off the curve: by t over the rows with the layer, less an allowance of 2 % of the
    /// end, of the level that stands out most, Bonferroni over levels. Levels within a zone that is cut are no part of the curve.
    /// </summary>
    public static double P(ResponseCurve curve, CutZone cut, double[] without, IReadOnlyList<double[]> with)
    {
        var end = LevelResponse.Mean(with).Max();
        var least = 1.0;
        var levels = 0;
        for (var place = 0; place < without.Length; place++)
        {
            if (cut.Low > 0 && without[place] <= cut.High)
            {
                continue;
            }

            levels++;
            double[] off = [.. with.Select(row => 100 * ((row[place] / end) - curve.At(without[place])))];
            var (excess, error) = (Math.Abs(Moments.Mean(off)) - Allowance, Moments.StandardDeviation(off) / Math.Sqrt(off.Length));
            if (excess > 0)
            {
                least = Math.Min(least, error == 0 ? 0 : StudentDistribution.TwoSidedP(excess / error, off.Length - 1));
            }
        }

        return Math.Min(1, levels * least);
    }
}
