using Microsoft.AspNetCore.Components;

namespace Tarry.Web.Sticks;

/// <summary>The fields of a recording.</summary>
public sealed partial class StickFields
{
    /// <summary>What is filled in.</summary>
    [Parameter]
    [EditorRequired]
    public required StickForm Form { get; set; }

    /// <summary>The ports there are.</summary>
    [Parameter]
    [EditorRequired]
    public required IReadOnlyList<string> Ports { get; set; }
}
