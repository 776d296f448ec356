using Tarry.Studies.StudyFiles;

namespace Tarry.Studies.Checking;

/// <summary>Whether every exclusion sets something aside.</summary>
internal static class ExclusionCheck
{
    public static IEnumerable<StudyProblem> Run(Study study, IReadOnlyList<SessionCheck> sessions)
    {
        foreach (var exclusion in study.File.Exclusions)
        {
            if (sessions.All(session => session.Key != exclusion.Session))
            {
                yield return new StudyProblem(
                    StudyProblemKind.ExclusionWithoutTrials,
                    StudyFileText.FileName,
                    $"An exclusion is of session {exclusion.Session}, which the study does not have.",
                    $"Correct or remove that [[exclude]] in {StudyFileText.FileName}.");
            }
            else if (sessions.First(session => session.Key == exclusion.Session).Counts is { } && SetsNothingAside(study, exclusion))
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
