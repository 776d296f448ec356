namespace Tarry.Web.Uploads;

/// <summary>What may be brought in.</summary>
/// <param name="MostBytes">The longest file.</param>
/// <param name="MostBytesInAll">All that wait together.</param>
/// <param name="LeastFreeBytes">What stays free on the disk that they wait on.</param>
/// <param name="KeptFor">How long one waits; then it is deleted.</param>
public sealed record UploadLimits(long MostBytes, long MostBytesInAll, long LeastFreeBytes, TimeSpan KeptFor)
{
    private const long Gigabyte = 1_000_000_000;

    /// <summary>A logic analyser's hour is below the first; the others follow from it. A longer file is imported by the command line, which copies nothing.</summary>
    public static UploadLimits Usual { get; } = new(Gigabyte, 4 * Gigabyte, Gigabyte / 2, TimeSpan.FromHours(12));
}
