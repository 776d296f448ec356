using Tarry.Studies.Disk;
using Tarry.Studies.Sealing;
using Tarry.Studies.Sessions;
using Tarry.Studies.StudyFiles;

namespace Tarry.Studies.Journals;

/// <summary>The life of a live session on the disk: begin, resume, seal.</summary>
internal static class Recording
{
    public static SessionRecorder Begin(StudyPaths paths, StudyFile file, SessionRecord initial)
    {
        var key = initial.Key;
        RequireDeclared(file, key);
        SegmentRules.Require(initial);
        if (key.Procedure is not null)
        {
            throw new ArgumentException($"Session {key} is named as one of a stick, and has no trials.", nameof(initial));
        }

        if (SessionFolders.Look(paths).IsTaken(key))
        {
            throw new StudyException(
                $"The study has the session {key} already.",
                paths.Relative(paths.Session(key)),
                File.Exists(paths.Journal(key)) ? "It is not finished: resume it, or use another sitting." : "Use another sitting; nothing sealed is changed.");
        }

        try
        {
            DurableFile.MakeFolder(paths.Sessions);
            DurableFile.MakeFolder(paths.Session(key));
            JournalWriter.Create(paths, initial);
            return Record(paths, JournalReader.Read(paths, key), notice: null);
        }
        catch (Exception exception) when (DiskFault.Is(exception))
        {
            RemoveIfEmpty(paths.Session(key));
            throw DiskFault.Describe(exception, paths.Relative(paths.Session(key)), "Nothing was captured yet.");
        }
    }

    public static SessionRecorder Resume(StudyPaths paths, SessionKey key)
    {
        if (SessionFolders.Look(paths).Current(key) is not null)
        {
            throw new StudyException($"Session {key} is sealed.", paths.Relative(paths.Session(key)), "Use another sitting; nothing sealed is changed.");
        }

        if (!File.Exists(paths.Journal(key)))
        {
            throw new StudyException($"There is no unfinished session {key}.", paths.Relative(paths.Session(key)), "Begin it instead.");
        }

        try
        {
            var reading = JournalReader.Read(paths, key);
            return Record(paths, reading, reading.TornNotice);
        }
        catch (Exception exception) when (DiskFault.Is(exception))
        {
            throw DiskFault.Describe(exception, paths.Relative(paths.Journal(key)));
        }
    }

    public static void RequireDeclared(StudyFile file, SessionKey key)
    {
        if (file.Conditions.All(condition => condition.Id != key.Condition))
        {
            throw new StudyException(
                $"The study has no condition '{key.Condition}'.",
                StudyFileText.FileName,
                $"Declare it with: tarry condition STUDY {key.Condition}");
        }
    }

    private static SessionRecorder Record(StudyPaths paths, JournalReading reading, string? notice)
    {
        var key = reading.State.Key;
        var writer = new JournalWriter(JournalWriter.Open(paths, key), key, reading.Lines, reading.WholeBytes);
        var recorder = new SessionRecorder(reading.State, writer, paths.Relative(paths.Journal(key)), () => Seal(paths, key));
        if (notice is not null)
        {
            recorder.AddEvent(notice);
        }

        return recorder;
    }

    private static SessionData Seal(StudyPaths paths, SessionKey key)
    {
        try
        {
            // From the disk and not from memory: what is sealed is what was safe.
            var reading = JournalReader.Read(paths, key);
            var data = new SessionData(reading.State.Record, reading.State.TrialsInOrder(), Sealed: true);
            var hashes = SealedSession.Write(paths, key, data.Record, reading.State.TrialsInOrder());
            Manifest.Read(paths).Enter(paths, hashes);
            File.Delete(paths.Journal(key));
            FolderFlush.Flush(paths.Session(key));
            return data;
        }
        catch (Exception exception) when (DiskFault.Is(exception))
        {
            throw DiskFault.Describe(exception, paths.Relative(paths.Session(key)), "The journal is kept; resume the session and seal it again.");
        }
    }

    private static void RemoveIfEmpty(string folder)
    {
        try
        {
            Directory.Delete(folder, recursive: false);
        }
        catch (Exception exception) when (DiskFault.Is(exception))
        {
            // Not there, not empty or not to be removed; the error that led here is the one to see.
        }
    }
}
