using Tarry.Studies.Sessions;

namespace Tarry.Studies;

/// <summary>What a session is at a glance: from its record alone, without its trials and unchecked against the manifest.</summary>
/// <param name="Key">Which session.</param>
/// <param name="IsSealed">Whether its capture is finished.</param>
/// <param name="Trials">Trials captured; null where its journal is open, it is of another kind, or its record cannot be read.</param>
/// <param name="Reports">Reports of a session of that kind; null likewise.</param>
/// <param name="WrittenAt">When its record was last written, by the file; a copy may have lost the true time.</param>
public sealed record SessionOutline(SessionKey Key, bool IsSealed, long? Trials, long? Reports, DateTimeOffset WrittenAt);
