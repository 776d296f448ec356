using Tarry.Studies.Sealing;
using Tarry.Studies.Sessions;
using Tarry.Studies.StudyFiles;

namespace Tarry.Studies;

/// <content>What changes the study file: each change is a whole one, and keeps the comments of who wrote the file.</content>
public sealed partial class Study
{
    /// <summary>Declares a condition, or changes one: the given keys are set, its others are kept.</summary>
    public void AddCondition(StudyLock held, ConditionEntry condition)
    {
        ArgumentNullException.ThrowIfNull(condition);
        Edit(held, text => StudyFileEditor.SetCondition(text, condition));
    }

    /// <summary>Names the reference condition, which need not be declared yet.</summary>
    public void SetReference(StudyLock held, string id) =>
        Edit(held, text => StudyFileEditor.SetReference(text, Names.Require(id, "reference")));

    /// <summary>Sets trials aside, with a reason.</summary>
    public void AddExclusion(StudyLock held, Exclusion exclusion)
    {
        ArgumentNullException.ThrowIfNull(exclusion);
        Edit(held, text => StudyFileEditor.AddExclusion(text, exclusion));
    }

    /// <summary>Gives the study another title.</summary>
    public void SetTitle(StudyLock held, string title) => Edit(held, text => StudyFileEditor.SetTitle(text, title));

    /// <summary>Sets the smallest difference that matters, in milliseconds, more than zero.</summary>
    public void SetMargin(StudyLock held, double marginMs) => Edit(held, text => StudyFileEditor.SetMargin(text, marginMs));

    /// <summary>Takes keys of a declared condition out of the study file.</summary>
    /// <param name="held">The lock.</param>
    /// <param name="id">The condition.</param>
    /// <param name="keys">Factors, or <c>nominal_report_hz</c>; one that it does not have is passed over.</param>
    public void ClearCondition(StudyLock held, string id, IReadOnlyCollection<string> keys) =>
        Edit(held, text => StudyFileEditor.ClearCondition(text, id, keys));

    /// <summary>Takes a condition out of the study file.</summary>
    /// <returns>What <see cref="Undo"/> takes back.</returns>
    /// <exception cref="StudyException">It has sessions, or it is not declared; nothing was changed.</exception>
    public StudyFileChange RemoveCondition(StudyLock held, string id)
    {
        var sessions = SessionFolders.Look(_paths).Keys.Count(key => key.Condition == id);
        return sessions == 0
            ? Change(held, text => StudyFileEditor.RemoveCondition(text, id))
            : throw new StudyException(
                $"The condition {id} has {sessions} {(sessions == 1 ? "session" : "sessions")}, which would belong to nothing.",
                null,
                "Keep it. To leave its trials out of what is computed, set them aside with a reason.");
    }

    /// <summary>Takes trials back in that an exclusion had set aside; nothing changes where the study file has none like it.</summary>
    /// <returns>What <see cref="Undo"/> takes back.</returns>
    public StudyFileChange RemoveExclusion(StudyLock held, Exclusion exclusion)
    {
        ArgumentNullException.ThrowIfNull(exclusion);
        return Change(held, text => StudyFileEditor.RemoveExclusion(text, exclusion));
    }

    /// <summary>Takes a change to the study file back.</summary>
    /// <exception cref="StudyException">The file has been changed since; it stays as it is.</exception>
    public void Undo(StudyLock held, StudyFileChange change)
    {
        ArgumentNullException.ThrowIfNull(change);
        Edit(held, text => text == change.After
            ? change.Before
            : throw new StudyException(
                $"{StudyFileText.FileName} has been changed since, so that the step cannot be taken back.", StudyFileText.FileName, "Enter again what was removed."));
    }

    private StudyFileChange Change(StudyLock held, Func<string, string> change)
    {
        var (before, after) = ("", "");
        Edit(held, text =>
        {
            before = text;
            return after = change(text);
        });
        return new StudyFileChange(before, after);
    }

    private void Edit(StudyLock held, Func<string, string> change)
    {
        Require(held);
        File = _store.Edit(change);
    }
}
