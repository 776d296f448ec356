using Microsoft.AspNetCore.Components;
using Tarry.Findings;
using Tarry.Web.Desk;

namespace Tarry.Web.Parts;

/// <summary>The frame of a study's page.</summary>
public sealed partial class StudyFrame
{
    /// <summary>The page.</summary>
    [Parameter]
    [EditorRequired]
    public required StudyPage Of { get; set; }

    /// <summary>What the page is called.</summary>
    [Parameter]
    [EditorRequired]
    public required string Heading { get; set; }

    /// <summary>Whether the page has something to show of a study without trials.</summary>
    [Parameter]
    public bool ShowsEmpty { get; set; }

    /// <summary>The study's title, of a page that does not wait for the findings.</summary>
    [Parameter]
    public string? Title { get; set; }

    /// <summary>The page's content, drawn once the findings are there.</summary>
    [Parameter]
    public RenderFragment<FindingsDocument>? ChildContent { get; set; }

    /// <summary>The content of a page that does not wait for the findings.</summary>
    [Parameter]
    public RenderFragment? WithoutFindings { get; set; }
}
