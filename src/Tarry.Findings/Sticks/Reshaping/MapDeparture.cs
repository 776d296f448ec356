using Tarry.Statistics.Descriptives;
using Tarry.Statistics.Distributions;

namespace Tarry.Findings.Sticks.Reshaping;

/// <summary>Whether a map has another form than the curve that was fitted to it.</summary>
internal static class MapDeparture
{
    private const double Allowance = 2;

    /// <summary>
    /// The probability that chance alone puts some level as far off the curve: by t over the rows with the layer and without, less an allowance of
    /// 2 % of the end, of the level that stands out most, Bonferroni over levels. Levels within a zone that is cut are no part of the curve.
    /// </summary>
    public static double P(ResponseCurve curve, CutZone cut, IReadOnlyList<double[]> rowsWithout, IReadOnlyList<double[]> rowsWith)
    {
        var (without, with) = (LevelResponse.Mean(rowsWithout), LevelResponse.Mean(rowsWith));
        var end = with.Max();
        var least = 1.0;
        var levels = 0;
        for (var place = 0; place < without.Length; place++)
        {
            if (cut.Low > 0 && without[place] <= cut.High)
            {
                continue;
            }

            levels++;
            var excess = (100 * Math.Abs((with[place] / end) - curve.At(without[place]))) - Allowance;
            if (excess > 0)
            {
                var error = Math.Sqrt(Variance(rowsWith, place) + Variance(rowsWithout, place)) * 100 / end;
                least = Math.Min(least, error == 0 ? 0 : StudentDistribution.TwoSidedP(excess / error, rowsWith.Count + rowsWithout.Count - 2));
            }
        }

        return Math.Min(1, levels * least);
    }

    private static double Variance(IReadOnlyList<double[]> rows, int place) => Moments.Variance([.. rows.Select(row => row[place])]) / rows.Count;
}
