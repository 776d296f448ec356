namespace Tarry.Rig.SimulatedBench.Sticks;

/// <summary>What of a simulated rig reads wipers and sets levels: a stream at most, and the level that the converter stands at.</summary>
/// <param name="options">The rig.</param>
/// <param name="say">Takes the tick at which a frame is said, its kind, a tick in it or null, and the fields around that.</param>
internal sealed class SimulatedReadings(SimulatedRigOptions options, SimulatedReadings.Frame say)
{
    private SimulatedStream? stream;
    private (ushort Level, long Tick)? level;

    /// <summary>A frame to say.</summary>
    /// <param name="tick">When.</param>
    /// <param name="kind">Its kind.</param>
    /// <param name="before">Its fields before the tick that it tells.</param>
    /// <param name="told">The tick that it tells; null for none.</param>
    /// <param name="after">Its fields after that.</param>
    public delegate void Frame(long tick, char kind, string before, long? told, string after);

    /// <summary>Whether a stream is on.</summary>
    public bool IsOn => stream is not null;

    /// <summary>When the next reading is due.</summary>
    public long NextTick => stream?.NextTick ?? long.MaxValue;

    /// <summary>Begins a stream.</summary>
    public void Begin(long tick, uint intervalUs) => stream = new SimulatedStream(
        options.StickHand,
        options.Seed,
        tick,
        (long)intervalUs * options.TickHz / 1_000_000,
        options.TickHz,
        (at, first, number, digits) => say(at, 'S', number, first, $"0000 {digits}"));

    /// <summary>Takes the reading that is due.</summary>
    public void Act(long tick) => stream?.Read(tick, level is { } set ? (2.0 * set.Level / ushort.MaxValue) - 1 : null);

    /// <summary>Ends the stream, if one is on.</summary>
    public void End(long tick)
    {
        if (stream is { } ended)
        {
            ended.Flush(tick);
            say(tick, 'E', FormattableString.Invariant($"{ended.Count:x8} 0000"), null, "");
            stream = null;
        }
    }

    /// <summary>Sets a level; asked for again it stands as it did.</summary>
    /// <returns>The level, and since when it stands.</returns>
    public (ushort Level, long Tick) SetLevel(long tick, ushort asked, bool repeated)
    {
        level = repeated && level is { } before ? before : (asked, tick);
        return level.Value;
    }

    /// <summary>A restart: no stream, and no level known.</summary>
    public void Reset() => (stream, level) = (null, null);
}
