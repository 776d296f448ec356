using System.Xml.Linq;
using Microsoft.AspNetCore.Components;
using Tarry.Findings;
using Tarry.Findings.Quality;
using Tarry.Reports.Documents;
using Tarry.Studies;
using Tarry.Web.Desk;
using Tarry.Web.Quality;

namespace Tarry.Web.Pages;

/// <summary>What can and what cannot be trusted: counts that reconcile, cautions, files, refusals, exclusions, rig and clock.</summary>
public sealed partial class QualityPage : StudyPage
{
    private IReadOnlyList<(string Kind, IReadOnlyList<(string? Condition, Caution Caution)> Cautions)> groups = [];
    private FindingsDocument? found;
    private XElement? counts;
    private CaptureBook? book;
    private Exception? fault;

    /// <summary>Where the window is.</summary>
    [Inject]
    public required NavigationManager Navigation { get; set; }

    /// <inheritdoc/>
    protected override void OnFound(FindingsDocument document)
    {
        groups = CautionGroups.Of(document);
        counts = CountsSection.Build(document);
    }

    /// <inheritdoc/>
    protected override async Task OnFoundAsync(FindingsDocument document)
    {
        var desk = Desk!;
        if (document == found)
        {
            return;
        }

        found = document;
        try
        {
            (book, fault) = (await Task.Run(() => CaptureBook.Read(desk.Open())), null);
        }
        catch (Exception problem) when (problem is StudyException or IOException or UnauthorizedAccessException)
        {
            (book, fault) = (null, problem);
        }
    }

    private bool HasTrials => found is { Conditions.Count: > 0 };

    private string Here(string section) => Navigation.ToBaseRelativePath(Navigation.Uri).Split('#')[0] + "#" + section;
}
