namespace Tarry.Statistics.Edges;

/// <summary>Finds the edges of a two-level signal, and takes those of a bouncing contact for one.</summary>
/// <remarks>
/// An edge counts at once, unless the signal has changed within the quiet time before it: then it is a bounce, and is
/// counted. So a press is timed at the first touch, and neither its own bounces nor those of the release before make another.
/// A signal that was unknown makes no edge when it is known again, because when it changed is not known.
/// Common practice (a lock-out), no published source.
/// </remarks>
/// <param name="edge">Which change counts.</param>
/// <param name="quiet">For how long the signal must have stayed, in ticks; 0 to take every edge.</param>
public sealed class EdgeFilter(SignalEdge edge, long quiet)
{
    private long? lastChange;

    /// <summary>The level now.</summary>
    public SignalLevel Level { get; private set; }

    /// <summary>Edges that were taken for bounces.</summary>
    public long Bounces { get; private set; }

    /// <summary>How often the signal became unknown after it was known.</summary>
    public long Losses { get; private set; }

    /// <summary>Whether the signal is at the level to which the counted edge leads.</summary>
    public bool Active => edge switch
    {
        SignalEdge.Rising => Level == SignalLevel.High,
        SignalEdge.Falling => Level == SignalLevel.Low,
        _ => false,
    };

    /// <summary>The level at a time; whether that is an edge that counts.</summary>
    /// <param name="time">In ticks, not before the one told last.</param>
    /// <param name="level">The level from then on.</param>
    public bool Take(long time, SignalLevel level)
    {
        var before = Level;
        if (level == before)
        {
            return false;
        }

        Level = level;
        if (level == SignalLevel.Unknown)
        {
            Losses++;
            lastChange = time;
            return false;
        }

        if (before == SignalLevel.Unknown)
        {
            return false;
        }

        var isQuiet = lastChange is not { } last || time - last >= quiet;
        lastChange = time;
        var counts = edge == SignalEdge.Any || (level == SignalLevel.High) == (edge == SignalEdge.Rising);
        Bounces += counts && !isQuiet ? 1 : 0;
        return counts && isQuiet;
    }
}
