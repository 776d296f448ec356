using Tarry.Studies.Disk;
using Tarry.Studies.Sessions;

namespace Tarry.Studies.Imports;

/// <summary>A session about to be sealed.</summary>
/// <param name="Entry">The entry that it will have.</param>
/// <param name="Write">Writes its files, reads them back, and gives their hashes by path in the study.</param>
internal sealed record ImportedSession(SessionEntry Entry, Func<StudyPaths, Dictionary<string, string>> Write);
