using Microsoft.AspNetCore.Components;
using Tarry.Findings;
using Tarry.Studies;
using Tarry.Studies.StudyFiles;
using Tarry.Web.Conditions;
using Tarry.Web.Desk;

namespace Tarry.Web.Pages;

/// <summary>A condition: all the evidence behind its figures, and its sessions, which can be set aside and taken back in.</summary>
public sealed partial class ConditionPage : StudyPage
{
    private ConditionView? view;
    private Exclusion? kept;
    private string? problem;

    /// <summary>The condition's id; the first of the standing where the address names none.</summary>
    [Parameter]
    public string? Id { get; set; }

    /// <summary>The sitting whose trials are drawn alone.</summary>
    [SupplyParameterFromQuery]
    public string? Sitting { get; set; }

    /// <summary>The sitting whose session is to be set aside on trial.</summary>
    [SupplyParameterFromQuery]
    public string? Aside { get; set; }

    /// <summary>Where the window is.</summary>
    [Inject]
    public required NavigationManager Navigation { get; set; }

    /// <inheritdoc/>
    protected override void OnFound(FindingsDocument document)
    {
        var made = ConditionView.Make(document, Desk!.Open().File.Exclusions, Id, Sitting, Aside);

        // What is drawn of one condition is kept by it: the same one must stay the same.
        view = made is not null && made.Condition == view?.Condition && made.Sitting == view.Sitting ? made with { InOrder = view.InOrder } : made;
        if (kept?.Session.Condition != view?.Condition.Id)
        {
            kept = null;
        }
    }

    private string Of(string? id, string query = "", string section = "") => To($"condition/{id}{query}") + (section.Length > 0 ? "#" + section : "");

    private string AsideOf(string sitting) => Of(view!.Condition.Id, $"?aside={sitting}", "aside");

    private string Here(string section) => Navigation.ToBaseRelativePath(Navigation.Uri).Split('#')[0] + "#" + section;

    private static string Named(Exclusion exclusion) => (exclusion.FirstSequence, exclusion.LastSequence) switch
    {
        (null, null) => exclusion.Session.ToString(),
        ({ } first, { } last) => $"{exclusion.Session}, trials {first} to {last}",
        ({ } first, null) => $"{exclusion.Session}, from trial {first}",
        (null, { } last) => $"{exclusion.Session}, up to trial {last}",
    };

    private void OnKept(Exclusion exclusion)
    {
        (kept, problem) = (exclusion, null);
        Navigation.NavigateTo(Of(exclusion.Session.Condition, "", "sessions"));
    }

    private void TakeBackIn(Exclusion exclusion)
    {
        try
        {
            Desk!.Edit((study, held) => study.RemoveExclusion(held, exclusion));
            (kept, problem) = (null, null);
        }
        catch (StudyException refused)
        {
            problem = $"{refused.Message} {refused.Remedy}";
        }
    }
}
