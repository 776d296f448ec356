using Tarry.Studies.Checking;
using Tarry.Studies.Sealing;

namespace Tarry.Studies;

/// <summary>Checks that a study is whole: every sealed file as it was sealed, every session consistent in itself and with the study file.</summary>
public static class StudyCheck
{
    /// <summary>Checks everything, one session at a time. Nothing is changed.</summary>
    /// <exception cref="StudyException">The manifest itself cannot be read.</exception>
    public static StudyCheckResult Run(Study study) => RunWatched(study, progress: null, CancellationToken.None);

    /// <summary>The same, for those who watch it and may stop it.</summary>
    /// <param name="study">The study.</param>
    /// <param name="progress">Told of each session once it is checked.</param>
    /// <param name="cancellation">Stops between sessions.</param>
    /// <exception cref="StudyException">The manifest itself cannot be read.</exception>
    /// <exception cref="OperationCanceledException">It was stopped.</exception>
    public static StudyCheckResult RunWatched(Study study, IProgress<CheckProgress>? progress, CancellationToken cancellation)
    {
        ArgumentNullException.ThrowIfNull(study);
        var folders = SessionFolders.Look(study.Paths);
        var manifestProblems = ManifestCheck.Run(study.Paths, folders);
        var unsound = manifestProblems.Select(problem => problem.Place).ToHashSet(StringComparer.Ordinal);
        var sessions = new List<SessionCheck>();
        var keys = folders.Keys;
        foreach (var key in keys)
        {
            cancellation.ThrowIfCancellationRequested();
            sessions.Add(new SessionInspection(study, folders, key, unsound).Run());
            progress?.Report(new CheckProgress(sessions.Count, keys.Count));
        }

        return new StudyCheckResult(
            [
                .. manifestProblems
                    .Concat(sessions.SelectMany(session => session.Problems))
                    .Concat(ExclusionCheck.Run(study, sessions))
                    .OrderBy(problem => problem.Place, StringComparer.Ordinal),
            ],
            sessions);
    }
}
