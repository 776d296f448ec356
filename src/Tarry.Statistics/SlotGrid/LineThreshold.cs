using Tarry.Statistics.Distributions;

namespace Tarry.Statistics.SlotGrid;

/// <summary>From which power on a line is no accident of the noise.</summary>
internal static class LineThreshold
{
    /// <summary>The false-alarm rate of the line search of one condition.</summary>
    public const double FalseAlarms = 1e-3;

    /// <summary>The power that noise exceeds with probability <see cref="FalseAlarms"/> anywhere in the searched frequencies.</summary>
    /// <param name="series">How many series are summed: chi-squared with twice as many degrees of freedom.</param>
    /// <param name="span">Their span in seconds: a new independent frequency every half 1/span.</param>
    /// <param name="widthHz">The width of the searched frequencies.</param>
    public static double Of(int series, double span, double widthHz)
    {
        var level = FalseAlarms / (2 * widthHz * span);
        var (low, high) = (1.0, 2000.0);
        for (var i = 0; i < 60; i++)
        {
            var middle = (low + high) / 2;
            (low, high) = ChiSquaredDistribution.UpperTail(middle, 2 * series) > level ? (middle, high) : (low, middle);
        }

        return high;
    }
}
