using Tarry.Studies.StudyFiles;

namespace Tarry.Studies.Checking;

/// <summary>Whether every exclusion sets something aside.</summary>
internal static class ExclusionCheck
{
    public static IEnumerable<StudyProblem> Run(Study study, IReadOnlyList<SessionCheck> sessions)
    {
        foreach (var exclusion in study.File.Exclusions)
        {
            var session = sessions.FirstOrDefault(session => session.Key == exclusion.Session);
            if (session is null)
            {
                yield return new StudyProblem(
                    StudyProblemKind.ExclusionWithoutTrials,
                    StudyFileText.FileName,
                    $"An exclusion is of session {exclusion.Session}, which the study does not have.",
                    $"Correct or remove that [[exclude]] in {StudyFileText.FileName}.");
            }
            else if (exclusion is not { FirstSequence: null, LastSequence: null } && session is { Positions: not null } or { Reports: not null })
            {
                yield return new StudyProblem(
                    StudyProblemKind.ExclusionWithoutTrials,
                    StudyFileText.FileName,
                    $"An exclusion of session {exclusion.Session} names trials, and the session has none: it sets nothing aside.",
                    $"Remove first_seq and last_seq of that [[exclude]] in {StudyFileText.FileName} to set the session aside as a whole.");
            }
            else if (session.Counts is { } && SetsNothingAside(study, exclusion))
            {
                yield return new StudyProblem(
                    StudyProblemKind.ExclusionWithoutTrials,
                    StudyFileText.FileName,
                    $"An exclusion of session {exclusion.Session} is of trials that the session does not have.",
                    $"Correct first_seq and last_seq of that [[exclude]] in {StudyFileText.FileName}.");
            }
        }
    }

    private static bool SetsNothingAside(Study study, Exclusion exclusion) =>
        SessionTally.Of(study.Read(exclusion.Session), [exclusion]).Excluded == 0;
}
