using Tarry.Studies.Sessions;

namespace Tarry.Studies.Sticks;

/// <summary>A session of the kind <c>stick</c>: its record, which says what was done, and the positions.</summary>
/// <param name="Record">What it is; its <see cref="SessionRecord.Stick"/> is there.</param>
/// <param name="Samples">The positions, in ticks of the record's one segment.</param>
public sealed record StickSession(SessionRecord Record, StickSamples Samples)
{
    /// <summary>What was done with the stick.</summary>
    public StickSetup Setup => Record.Stick
        ?? throw new InvalidOperationException($"Session {Record.Key} says nothing of a stick.");
}
