using Microsoft.AspNetCore.Components;

namespace Tarry.Web.Sticks;

/// <summary>What a recording that was just sealed says.</summary>
public sealed partial class StickSaidPanel
{
    /// <summary>What it says.</summary>
    [Parameter]
    [EditorRequired]
    public required StickSaid Of { get; set; }

    /// <summary>The study's name on the shelf.</summary>
    [Parameter]
    [EditorRequired]
    public required string Study { get; set; }
}
