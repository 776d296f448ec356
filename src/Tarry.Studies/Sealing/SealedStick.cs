using System.Globalization;
using Tarry.Studies.Disk;
using Tarry.Studies.Sessions;
using Tarry.Studies.Sticks;

namespace Tarry.Studies.Sealing;

/// <summary>The two files of a sealed session of the kind <c>stick</c>.</summary>
internal static class SealedStick
{
    /// <summary>Writes them, flushes them and the folder, reads them back and compares.</summary>
    /// <returns>Their hashes by path in the study, for the manifest.</returns>
    public static Dictionary<string, string> Write(StudyPaths paths, SessionEntry entry, StickSession session)
    {
        var table = StickTable.Write(session.Samples);
        var document = StudyJson.File(SessionDocument.Of(session));
        DurableFile.WriteWithoutFolder(paths.Reports(entry), table);
        DurableFile.Write(paths.SessionFile(entry), document);

        var tableBack = File.ReadAllBytes(paths.Reports(entry));
        var documentBack = File.ReadAllBytes(paths.SessionFile(entry));
        if (!documentBack.AsSpan().SequenceEqual(document) || !Same(StickTable.Read(tableBack, session.Setup.Stimulus), session.Samples))
        {
            throw new StudyDamagedException(
                $"What was written for session {entry} does not read back the same.",
                paths.Relative(paths.Session(entry)),
                "Check the disk, and import or record again on a sound one.");
        }

        return new Dictionary<string, string>
        {
            [paths.Relative(paths.SessionFile(entry))] = Manifest.Sha256(documentBack),
            [paths.Relative(paths.Reports(entry))] = Manifest.Sha256(tableBack),
        };
    }

    /// <summary>Reads a sealed session; each file is checked against the manifest where that lists it.</summary>
    public static StickSession Read(StudyPaths paths, Manifest manifest, SessionEntry entry)
    {
        var (record, document) = SealedSession.ReadRecord(paths, manifest, entry, SessionDocument.StickKind);
        var place = paths.Relative(paths.Reports(entry));
        try
        {
            var table = SealedSession.ReadVerified(paths, manifest, paths.Reports(entry));
            var session = new StickSession(record, StickTable.Read(table, record.Stick!.Stimulus));
            var broken = document.Positions == session.Samples.Count
                ? session.Broken()
                : $"session.json states {document.Positions?.ToString(CultureInfo.InvariantCulture) ?? "no number of"} positions, and it has {session.Samples.Count}";
            return broken is null ? session : throw SealedSession.Damaged(place, broken);
        }
        catch (InvalidDataException exception)
        {
            throw SealedSession.Damaged(place, exception.Message, exception);
        }
    }

    /// <summary>Whether both hold the same; a stimulus that is not known (NaN) equals itself here.</summary>
    private static bool Same(StickSamples left, StickSamples right) =>
        left.Ticks.SequenceEqual(right.Ticks) && left.X.SequenceEqual(right.X) && left.Y.SequenceEqual(right.Y)
        && left.Stimulus.SequenceEqual(right.Stimulus) && left.StimulusY.SequenceEqual(right.StimulusY);
}
