namespace Tarry.Studies;

/// <summary>What a check of a study found.</summary>
/// <param name="Problems">All problems, those of the sessions too, in order of their places.</param>
/// <param name="Sessions">Each session, sorted.</param>
public sealed record StudyCheckResult(IReadOnlyList<StudyProblem> Problems, IReadOnlyList<SessionCheck> Sessions)
{
    /// <summary>Whether nothing is wrong. Open journals and torn last lines are told, and are not wrong.</summary>
    public bool Passed => Problems.Count == 0;
}
