using Microsoft.AspNetCore.Components;
using Tarry.Web.Shelf;

namespace Tarry.Web.Pages;

/// <summary>The shelf: all studies of a folder.</summary>
public sealed partial class ShelfPage
{
    private IReadOnlyList<ShelfEntry> entries = [];

    /// <summary>The shelf.</summary>
    [Inject]
    public required StudyShelf Shelf { get; set; }

    /// <inheritdoc/>
    protected override void OnInitialized() => entries = Shelf.Entries();
}
