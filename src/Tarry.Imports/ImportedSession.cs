using Tarry.Studies.Sessions;
using Tarry.Studies.Trials;

namespace Tarry.Imports;

/// <summary>A session as read from a file, ready to be sealed.</summary>
/// <param name="Record">What it is.</param>
/// <param name="Trials">Its trials, by sequence number.</param>
public sealed record ImportedSession(SessionRecord Record, IReadOnlyList<Trial> Trials);
