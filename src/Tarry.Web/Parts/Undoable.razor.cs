using Microsoft.AspNetCore.Components;

namespace Tarry.Web.Parts;

/// <summary>Something that was removed and can be brought back.</summary>
public sealed partial class Undoable
{
    /// <summary>What was removed.</summary>
    [Parameter]
    [EditorRequired]
    public required string Text { get; set; }

    /// <summary>Brings it back.</summary>
    [Parameter]
    [EditorRequired]
    public EventCallback OnUndo { get; set; }

    /// <summary>Lets it be.</summary>
    [Parameter]
    [EditorRequired]
    public EventCallback OnDone { get; set; }
}
