using Tarry.Imports;

namespace Tarry.Web.Importing;

/// <summary>Tells a page of progress, no oftener than anybody can see.</summary>
/// <param name="time">The clock.</param>
/// <param name="show">Shows it; called on any thread.</param>
internal sealed class LatestProgress(TimeProvider time, Action<ImportProgress> show) : IProgress<ImportProgress>
{
    private static readonly TimeSpan Between = TimeSpan.FromMilliseconds(200);
    private long shownAt = long.MinValue;

    public void Report(ImportProgress value)
    {
        if (shownAt == long.MinValue || time.GetElapsedTime(shownAt) >= Between)
        {
            shownAt = time.GetTimestamp();
            show(value);
        }
    }
}
