namespace Tarry.Web.Target;

/// <summary>The general flash threshold of WCAG 2.2 (success criterion 2.3.1, definition of "general flash and red flash thresholds").</summary>
/// <remarks>
/// Content is below the threshold where there are no more than three flashes in any one second, or where what flashes fills no more
/// than a quarter of any 10 degrees of the visual field. For a screen that the definition has no better figures of, 341 x 256 pixels at
/// 1,024 x 768 estimate those 10 degrees: so at most 0.25 x 341 x 256 = 21,824 square pixels. A flash is a pair of opposing changes of
/// relative luminance. The patch is black and white, so the red flash does not come in.
/// <para>In any one second, ends included, presses that are at least t ms apart number at most floor(1000 / t) + 1. A patch that is lit while
/// the press lasts flashes once a press; one that changes at each press flashes once in two.</para>
/// Below the threshold does not mean harmless for everybody.
/// </remarks>
public static class FlashRule
{
    /// <summary>Flashes allowed in any one second, whatever their size.</summary>
    public const int MostFlashes = 3;

    /// <summary>The area that may flash at any rate, in square CSS pixels.</summary>
    public const double LargestArea = 0.25 * 341 * 256;

    private const double OneSecondMs = 1000;

    /// <summary>The most flashes that can fall into one second.</summary>
    /// <param name="shortestIntervalMs">The shortest time from press to press, more than zero.</param>
    /// <param name="changesAtEachPress">The patch changes at each press, rather than being lit while it lasts.</param>
    public static int FlashesInASecond(double shortestIntervalMs, bool changesAtEachPress)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(shortestIntervalMs);
        var presses = (int)Math.Min(int.MaxValue - 1, Math.Floor(OneSecondMs / shortestIntervalMs)) + 1;
        return changesAtEachPress ? (presses + 1) / 2 : presses;
    }

    /// <summary>Whether a patch stays below the threshold.</summary>
    /// <param name="widthPx">Its width in CSS pixels.</param>
    /// <param name="heightPx">Its height.</param>
    /// <param name="flashesInASecond">The most flashes in any one second.</param>
    public static bool Allows(double widthPx, double heightPx, int flashesInASecond) =>
        flashesInASecond <= MostFlashes || widthPx * heightPx <= LargestArea;
}
