using Microsoft.AspNetCore.Components;
using Tarry.Reports.Wording;
using Tarry.Studies;
using Tarry.Studies.StudyFiles;
using Tarry.Web.Desk;
using Tarry.Web.Setup;

namespace Tarry.Web.Pages;

/// <summary>A study's set-up: its title, reference and margin, the conditions, and what is set aside.</summary>
public sealed partial class SetupPage
{
    private static readonly IReadOnlyDictionary<string, string> None = new Dictionary<string, string>();
    private StudyFile? file;
    private ILookup<string, SessionOutline> sessions = Array.Empty<SessionOutline>().ToLookup(session => session.Key.Condition);
    private HeadingForm? heading;
    private ConditionForm form = new(null);
    private IReadOnlyDictionary<string, string> headingProblems = None;
    private IReadOnlyDictionary<string, string> problems = None;
    private Exception? problem;
    private string? saved;
    private (string Text, StudyFileChange Change)? removed;

    /// <summary>The condition that is changed; null to declare one.</summary>
    [SupplyParameterFromQuery]
    public string? Change { get; set; }

    /// <summary>Where the selection is put.</summary>
    [Inject]
    public required NavigationManager Navigation { get; set; }

    /// <inheritdoc/>
    protected override bool NeedsFindings => false;

    /// <inheritdoc/>
    protected override async Task OnParametersSetAsync()
    {
        await base.OnParametersSetAsync();
        Read();
        form = new ConditionForm(file?.Conditions.FirstOrDefault(condition => condition.Id == Change));
        problems = None;
    }

    /// <inheritdoc/>
    protected override void OnStudyChanged() => Read();

    private void Read()
    {
        if (Desk is null)
        {
            return;
        }

        try
        {
            var study = Desk.Open();
            file = study.File;
            sessions = study.Outline.ToLookup(session => session.Key.Condition);
            heading = new HeadingForm(file);
        }
        catch (StudyException refused)
        {
            (file, problem) = (null, refused);
        }
    }

    private int SessionsOf(string condition) => sessions[condition].Count();

    private string? Wrong(string field) => problems.GetValueOrDefault(field);

    private string? WrongInHeading(string field) => headingProblems.GetValueOrDefault(field);

    private IEnumerable<string> LevelsOf(string factor) =>
        file!.Conditions.Select(condition => condition.Factors.GetValueOrDefault(factor)).OfType<string>().Distinct(StringComparer.Ordinal);

    private static string TrialsOf(Exclusion exclusion) => exclusion switch
    {
        { FirstSequence: { } first, LastSequence: { } last } => $", trials {Numbers.Whole(first)} to {Numbers.Whole(last)}",
        { FirstSequence: { } first } => $", from trial {Numbers.Whole(first)}",
        { LastSequence: { } last } => $", up to trial {Numbers.Whole(last)}",
        _ => ", all trials",
    };

    private void SaveHeading()
    {
        saved = null;
        headingProblems = heading!.Problems(file!);
        if (headingProblems.Count == 0 && Edit(heading.Save))
        {
            saved = "Saved.";
        }
    }

    private void SaveCondition()
    {
        problems = form.Problems(file!);
        if (problems.Count == 0 && Edit(form.Save))
        {
            form = new ConditionForm(null);
            Navigation.NavigateTo(To("setup"), replace: true);
        }
    }

    private void Remove(ConditionEntry condition) => Remove($"{condition.Id} was removed.", (study, held) => study.RemoveCondition(held, condition.Id));

    private void Remove(Exclusion exclusion) => Remove($"{exclusion.Session}{TrialsOf(exclusion)}: counted again.", (study, held) => study.RemoveExclusion(held, exclusion));

    private void Remove(string text, Func<Study, StudyLock, StudyFileChange> remove)
    {
        StudyFileChange? change = null;
        if (Edit((study, held) => change = remove(study, held)))
        {
            removed = (text, change!);
        }
    }

    private void Undo()
    {
        if (removed is var (_, change) && Edit((study, held) => study.Undo(held, change)))
        {
            removed = null;
        }
    }

    private bool Edit(Action<Study, StudyLock> change)
    {
        problem = null;
        try
        {
            Desk!.Edit(change);
            return true;
        }
        catch (StudyException refused)
        {
            problem = refused;
            return false;
        }
    }
}
