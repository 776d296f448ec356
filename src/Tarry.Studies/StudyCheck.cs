using Tarry.Studies.Checking;
using Tarry.Studies.Sealing;

namespace Tarry.Studies;

/// <summary>Checks that a study is whole: every sealed file as it was sealed, every session consistent in itself and with the study file.</summary>
public static class StudyCheck
{
    /// <summary>Checks everything, one session at a time. Nothing is changed.</summary>
    /// <exception cref="StudyException">The manifest itself cannot be read.</exception>
    public static StudyCheckResult Run(Study study)
    {
        ArgumentNullException.ThrowIfNull(study);
        var folders = SessionFolders.Look(study.Paths);
        var manifestProblems = ManifestCheck.Run(study.Paths, folders);
        var unsound = manifestProblems.Select(problem => problem.Place).ToHashSet(StringComparer.Ordinal);
        var sessions = folders.Keys.Select(key => new SessionInspection(study, folders, key, unsound).Run()).ToList();
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
