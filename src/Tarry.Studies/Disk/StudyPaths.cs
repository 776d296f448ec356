using Tarry.Studies.Sessions;

namespace Tarry.Studies.Disk;

/// <summary>Where things are in a study folder.</summary>
internal sealed class StudyPaths(string folder)
{
    public const string SessionFileName = "session.json";
    public const string TrialsFileName = "trials.parquet";
    public const string ReportsFileName = "reports.parquet";
    public const string JournalFileName = "journal.log";

    /// <summary>The study folder, absolute.</summary>
    public string Folder { get; } = Path.TrimEndingDirectorySeparator(Path.GetFullPath(folder));

    public string StudyFile => Path.Combine(Folder, "study.toml");

    public string Sessions => Path.Combine(Folder, "sessions");

    public string Imports => Path.Combine(Folder, "imports");

    public string Calibrations => Path.Combine(Folder, "calibrations");

    public string OpenRuns => Path.Combine(Folder, "open-runs");

    public string UnfinishedImport => Path.Combine(Imports, "unfinished.json");

    public string Manifest => Path.Combine(Folder, "manifest.json");

    public string Lock => Path.Combine(Folder, ".lock");

    public string LockHolder => Path.Combine(Folder, ".lock-holder.json");

    public string Session(SessionEntry entry) => Path.Combine(Sessions, entry.ToString());

    public string SessionFile(SessionEntry entry) => Path.Combine(Session(entry), SessionFileName);

    public string Trials(SessionEntry entry) => Path.Combine(Session(entry), TrialsFileName);

    public string Reports(SessionEntry entry) => Path.Combine(Session(entry), ReportsFileName);

    public string Journal(SessionKey key) => Path.Combine(Session(key), JournalFileName);

    public string OpenRun(SessionKey key) => Path.Combine(OpenRuns, $"{key}.json");

    /// <summary>The path inside the study with <c>/</c>, as the manifest and messages have it.</summary>
    public string Relative(string path) => Path.GetRelativePath(Folder, path).Replace('\\', '/');

    /// <summary>Whether a path that a file of the study names is a plain one inside it: a study may come from anybody.</summary>
    public static bool IsInside(string relative) =>
        relative.Split('/').All(part => part.Length > 0 && part is not ("." or "..") && part.AsSpan().IndexOfAny("\\:\0") < 0);

    /// <summary>The full path of what the manifest calls this.</summary>
    public string Absolute(string relative) => Path.Combine(Folder, Path.Combine(relative.Split('/')));
}
