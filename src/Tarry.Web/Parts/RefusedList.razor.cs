using Microsoft.AspNetCore.Components;
using Tarry.Studies.Sessions;

namespace Tarry.Web.Parts;

/// <summary>What was refused, and why, behind a fold.</summary>
public sealed partial class RefusedList
{
    private const int MostShown = 200;

    /// <summary>The first of what was refused.</summary>
    [Parameter]
    [EditorRequired]
    public required IReadOnlyList<RefusedItem> Items { get; set; }

    /// <summary>How many there are in all.</summary>
    [Parameter]
    [EditorRequired]
    public required long Total { get; set; }
}
