using Microsoft.AspNetCore.Components;

namespace Tarry.Web.Bench;

/// <summary>The care that wiring asks for.</summary>
public sealed partial class WiringCare
{
    /// <summary>Whether the work has a target that flashes.</summary>
    [Parameter]
    public bool Flashes { get; set; } = true;
}
