using Microsoft.AspNetCore.Components;
using Tarry.Rig.HostEvents;

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

    /// <summary>The input devices of this computer that may have a stick.</summary>
    [Parameter]
    [EditorRequired]
    public required IReadOnlyList<HostInputDescription> Devices { get; set; }
}
