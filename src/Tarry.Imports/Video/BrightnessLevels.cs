using Tarry.Statistics.Edges;

namespace Tarry.Imports.Video;

/// <summary>What counts as dark and as bright in one region.</summary>
/// <param name="Threshold">The brightness between them.</param>
/// <param name="Band">Between the threshold less this and more this the level stays what it was.</param>
internal readonly record struct BrightnessLevels(double Threshold, double Band)
{
    private const double LeastContrast = 4;
    private const double BandShare = 0.1;

    /// <summary>The middle between the mean of the dark and of the bright frames.</summary>
    /// <remarks>T. W. Ridler, S. Calvard, "Picture thresholding using an iterative selection method", IEEE Trans. Syst. Man Cybern. 8 (1978); from memory.</remarks>
    /// <returns>Null where the region is always of one brightness.</returns>
    public static BrightnessLevels? Of(IReadOnlyList<float> brightness)
    {
        if (brightness.Count == 0)
        {
            return null;
        }

        double threshold = (brightness.Min() + (double)brightness.Max()) / 2, dark = 0, bright = 0;
        for (var iteration = 0; iteration < 100; iteration++)
        {
            double darkSum = 0, brightSum = 0;
            var darkCount = 0;
            foreach (var value in brightness)
            {
                if (value < threshold)
                {
                    darkSum += value;
                    darkCount++;
                }
                else
                {
                    brightSum += value;
                }
            }

            if (darkCount == 0 || darkCount == brightness.Count)
            {
                return null;
            }

            (dark, bright) = (darkSum / darkCount, brightSum / (brightness.Count - darkCount));
            var next = (dark + bright) / 2;
            if (next == threshold)
            {
                break;
            }

            threshold = next;
        }

        return bright - dark < LeastContrast ? null : new BrightnessLevels(threshold, BandShare * (bright - dark));
    }

    /// <summary>The level of a brightness, after the level before it.</summary>
    public SignalLevel LevelOf(float brightness, SignalLevel before) =>
        brightness >= Threshold + Band ? SignalLevel.High
        : brightness < Threshold - Band ? SignalLevel.Low
        : before != SignalLevel.Unknown ? before
        : brightness >= Threshold ? SignalLevel.High : SignalLevel.Low;
}
