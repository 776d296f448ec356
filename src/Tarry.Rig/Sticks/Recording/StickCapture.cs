using Tarry.Rig.HostEvents.Recording;
using Tarry.Rig.Link;
using Tarry.Studies;
using Tarry.Studies.Sessions;

namespace Tarry.Rig.Sticks.Recording;

/// <summary>One session of a stick, from its first reading to the sealed file; what broke off is found again.</summary>
/// <param name="study">The study.</param>
/// <param name="held">Its lock.</param>
/// <param name="key">The session; it names a procedure.</param>
public sealed class StickCapture(Study study, StudyLock held, SessionKey key)
{
    private readonly string file = FileOf(study, key);

    /// <summary>Where the recording of a session is.</summary>
    public static string FileOf(Study study, SessionKey key)
    {
        ArgumentNullException.ThrowIfNull(study);
        return Path.Combine(study.Folder, "recordings", $"{key}.txt");
    }

    /// <summary>Recordings of sticks that broke off, the rig's and the host's: those of no sealed session.</summary>
    public static IReadOnlyList<SessionKey> BrokenOff(Study study)
    {
        ArgumentNullException.ThrowIfNull(study);
        var folder = Path.Combine(study.Folder, "recordings");
        var known = study.StickKeys.ToHashSet();
        return !Directory.Exists(folder) ? [] :
        [
            .. Directory.EnumerateFiles(folder, "*.txt")
                .Where(path => File.ReadLines(path).FirstOrDefault() is { } line && (StickRecordingHeader.Read(line) is not null || RecordingHeader.Read(line) is not null))
                .Select(path => KeyIn(Path.GetFileNameWithoutExtension(path)))
                .OfType<SessionKey>()
                .Where(key => key.Procedure is not null && !known.Contains(key))
                .Order(),
        ];
    }

    /// <summary>Records and seals what came.</summary>
    /// <param name="source">Where the rig is.</param>
    /// <param name="request">What is recorded.</param>
    /// <param name="progress">Told where it stands.</param>
    /// <param name="stop">Stops it in good order: what came is sealed.</param>
    /// <param name="discards">Asked at the end: whether what came is to be removed instead.</param>
    /// <exception cref="RigException">There is no rig, or its firmware knows no stream; nothing is begun.</exception>
    /// <exception cref="IOException">The file is there already, or the disk failed; what is on it is found again.</exception>
    /// <exception cref="StudyException">It cannot be sealed; the recording is kept.</exception>
    public StickCaptureResult Record(IRigPortSource source, StickRecordingRequest request, IProgress<StickProgress>? progress, CancellationToken stop, Func<bool>? discards = null)
    {
        var isComplete = new StickRecorder(source, request, progress).Run(file, stop);
        if (discards?.Invoke() == true)
        {
            Remove();
            return new StickCaptureResult(false, null);
        }

        if (!File.Exists(file))
        {
            return new StickCaptureResult(false, null);
        }

        var result = new StickCaptureResult(isComplete, Seal());
        if (result.Session is null)
        {
            Remove();
        }

        return result;
    }

    /// <summary>Seals what the recording holds, also one that broke off.</summary>
    /// <returns>The session; null where the recording holds no reading that is part of the procedure, and is left.</returns>
    /// <exception cref="RigException">It is no such recording.</exception>
    /// <exception cref="StudyException">It cannot be sealed; the recording is kept.</exception>
    public Studies.Sticks.StickSession? Seal()
    {
        if (RecordedStick.Find(file, key) is not var (session, import))
        {
            return null;
        }

        study.SealImported(held, [session], import, []);
        return session;
    }

    /// <summary>Removes the recording for good.</summary>
    public void Remove() => File.Delete(file);

    private static SessionKey? KeyIn(string name)
    {
        try
        {
            return SessionKey.Parse(name);
        }
        catch (ArgumentException)
        {
            return null;
        }
    }
}
