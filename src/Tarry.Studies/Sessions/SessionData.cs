using Tarry.Studies.Trials;

namespace Tarry.Studies.Sessions;

/// <summary>A session read back: its record and its trials in capture order.</summary>
/// <param name="Record">What it is.</param>
/// <param name="Trials">Its trials, by sequence number.</param>
/// <param name="Sealed">Whether it is sealed, or still an open journal.</param>
public sealed record SessionData(SessionRecord Record, IReadOnlyList<Trial> Trials, bool Sealed);
