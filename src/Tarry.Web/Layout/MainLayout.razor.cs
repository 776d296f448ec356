using Microsoft.AspNetCore.Components;
using Microsoft.AspNetCore.Components.Web;

namespace Tarry.Web.Layout;

/// <summary>What every page has around it. It says when it answers to clicks: before that a test, or a hasty hand, would click in vain.</summary>
public sealed partial class MainLayout
{
    private ErrorBoundary? boundary;

    /// <summary>Where the window is.</summary>
    [Inject]
    public required NavigationManager Navigation { get; set; }

    private string Here => Navigation.ToBaseRelativePath(Navigation.Uri).Split('#')[0];

    /// <inheritdoc/>
    protected override void OnParametersSet() => boundary?.Recover();
}
