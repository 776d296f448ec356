using Tarry.Studies.Sessions;

namespace Tarry.Studies;

/// <summary>What a check found of one session.</summary>
/// <param name="Key">Which.</param>
/// <param name="Sealed">Whether it is sealed; an open one is no problem, but its capture is not finished.</param>
/// <param name="Counts">Its counts with the exclusions; null where it could not be read.</param>
/// <param name="TornBytes">Bytes of a torn last line in its journal, which recovery cuts; 0 for none.</param>
/// <param name="Problems">What is wrong with it.</param>
public sealed record SessionCheck(SessionKey Key, bool Sealed, SessionCounts? Counts, long TornBytes, IReadOnlyList<StudyProblem> Problems)
{
    /// <summary>How many reports it has, of a session of that kind; null for latencies, or where it could not be read.</summary>
    public long? Reports { get; init; }

    /// <summary>How many positions it has, of a session of a stick; null for others, or where it could not be read.</summary>
    public long? Positions { get; init; }
}
