using Microsoft.AspNetCore.Components;
using Tarry.Findings;
using Tarry.Reports.DataPackage;
using Tarry.Reports.Figures;
using Tarry.Studies.Sessions;
using Tarry.Web.Desk;
using Tarry.Web.Publishing;

namespace Tarry.Web.Pages;

/// <summary>Writes the report, figures, tables and data package of a study into its folder <c>report</c>, and opens what is there.</summary>
public sealed partial class PublishPage
{
    private const int MostFiles = 200;
    private readonly Dictionary<string, string> problems = new(StringComparer.Ordinal);
    private PublicationDraft draft = new();
    private PublicationRun? run;
    private IReadOnlyList<(StudyFigure Figure, string Svg)> figures = [];
    private IReadOnlyList<PublishedFile> files = [];
    private FindingsDocument? drawn;

    /// <summary>Drafts and what is being written.</summary>
    [Inject]
    public required Publications Publications { get; set; }

    /// <inheritdoc/>
    protected override void OnInitialized() => Publications.Changed += OnPublished;

    /// <inheritdoc/>
    protected override void OnFound(FindingsDocument document)
    {
        (draft, run) = (Publications.Draft(Desk!.Name), Publications.Run(Desk.Name));
        files = PublishedFolder.Files(Desk.Folder, MostFiles);
        if (!ReferenceEquals(drawn, document))
        {
            drawn = document;
            figures = [.. StudyFigures.Of(document).Select(figure => (figure, figure.Draw(document, FigureStyle.Phone with { Name = $"choice-{figure.Name}", Theme = FigureTheme.Inherited })))];
        }
    }

    /// <inheritdoc/>
    protected override void Dispose(bool disposing)
    {
        Publications.Changed -= OnPublished;
        base.Dispose(disposing);
    }

    private static string? Blank(string? value) => string.IsNullOrWhiteSpace(value) ? null : value.Trim();

    private string? Wrong(string field) => problems.GetValueOrDefault(field);

    private string Address(PublishedFile file) =>
        StudyAddress.Of(Desk!.Name, "published/") + string.Join('/', file.Name.Split('/').Select(Uri.EscapeDataString));

    private void Take(PublicationDraft changed)
    {
        draft = changed;
        problems.Clear();
        if (draft.Licence is { } licence && Licence.FromId(licence) is null)
        {
            problems[nameof(draft.Licence)] = "Give an SPDX identifier of letters, digits, '.', '_' and '-', such as CC-BY-4.0; or leave it empty.";
        }

        if (draft.Subfolder is { } name && !Names.IsName(name))
        {
            problems[nameof(draft.Subfolder)] = "Use 1 to 64 lower-case letters, digits, '-' or '_', beginning with a letter or digit; or leave it empty.";
        }

        Publications.Keep(Desk!.Name, draft);
    }

    private void Choose(StudyFigure figure, bool chosen)
    {
        var leftOut = draft.LeftOut.ToHashSet(StringComparer.Ordinal);
        _ = chosen ? leftOut.Remove(figure.Name) : leftOut.Add(figure.Name);
        Take(draft with { LeftOut = leftOut });
    }

    private void Publish()
    {
        if (problems.Count == 0)
        {
            Publications.Begin(Desk!);
            run = Publications.Run(Desk!.Name);
        }
    }

    private void OnPublished(string study) => _ = InvokeAsync(() =>
    {
        if (study == Desk?.Name)
        {
            run = Publications.Run(study);
            files = run is { IsRunning: false } ? PublishedFolder.Files(Desk.Folder, MostFiles) : files;
            StateHasChanged();
        }
    });
}
