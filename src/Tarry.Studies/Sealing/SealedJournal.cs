using Tarry.Studies.Disk;
using Tarry.Studies.Journals;
using Tarry.Studies.Sessions;

namespace Tarry.Studies.Sealing;

/// <summary>A journal that stands beside the sealed files made from it: sealing was interrupted at its last step.</summary>
internal static class SealedJournal
{
    /// <summary>Whether the journal holds what the sealed files hold, so that nothing is lost with it.</summary>
    public static bool Agrees(StudyPaths paths, Manifest manifest, SessionKey key)
    {
        try
        {
            var journal = JournalReader.Read(paths, key).State;
            var (record, _) = SealedSession.ReadRecord(paths, manifest, key);
            return StudyJson.Line(SessionDocument.Of(record, null)) == StudyJson.Line(SessionDocument.Of(journal.Record, null))
                && SealedSession.ReadTrials(paths, manifest, key).AsSpan().SequenceEqual(journal.TrialsInOrder());
        }
        catch (Exception exception) when (DiskFault.Is(exception) || exception is StudyException)
        {
            return false;
        }
    }
}
