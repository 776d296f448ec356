namespace Tarry.Statistics.Shapes;

/// <summary>The latencies of one session, for a fit of their shape.</summary>
public sealed class SessionLatencies
{
    /// <summary>The latencies of one session.</summary>
    /// <param name="sortedMs">The latencies in milliseconds, ascending, at least one; not copied.</param>
    /// <param name="resolutionMs">The step in which they were recorded, in milliseconds; 0 where it is too fine to matter.</param>
    /// <exception cref="ArgumentException">There are none.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The resolution is negative or not finite.</exception>
    public SessionLatencies(double[] sortedMs, double resolutionMs)
    {
        ArgumentNullException.ThrowIfNull(sortedMs);
        Argument.RequireCount(sortedMs, 1, nameof(sortedMs));
        Argument.RequireNotNegative(resolutionMs, nameof(resolutionMs));
        (SortedMs, ResolutionMs) = (sortedMs, resolutionMs);
    }

    /// <summary>The latencies, ascending.</summary>
    public double[] SortedMs { get; }

    /// <summary>The step in which they were recorded.</summary>
    public double ResolutionMs { get; }
}
