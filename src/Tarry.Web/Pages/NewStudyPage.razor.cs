using Microsoft.AspNetCore.Components;
using Tarry.Studies;
using Tarry.Web.Desk;
using Tarry.Web.Shelf;

namespace Tarry.Web.Pages;

/// <summary>Makes a study.</summary>
public sealed partial class NewStudyPage
{
    private readonly NewStudyForm form = new();
    private IReadOnlyDictionary<string, string> problems = NewStudyForm.NoProblems;
    private Exception? problem;

    /// <summary>Where it is made.</summary>
    [Inject]
    public required StudyShelf Shelf { get; set; }

    /// <summary>Goes to the study.</summary>
    [Inject]
    public required NavigationManager Navigation { get; set; }

    private string? Wrong(string field) => problems.GetValueOrDefault(field);

    private void Make()
    {
        (problems, problem) = (form.Problems(Shelf), null);
        if (problems.Count > 0)
        {
            return;
        }

        try
        {
            Navigation.NavigateTo(StudyAddress.Of(form.Create(Shelf), "setup"));
        }
        catch (StudyException refused)
        {
            problem = refused;
        }
    }
}
