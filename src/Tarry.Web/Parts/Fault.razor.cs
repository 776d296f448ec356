using Microsoft.AspNetCore.Components;

namespace Tarry.Web.Parts;

/// <summary>An error with its place and what to do about it.</summary>
public sealed partial class Fault
{
    /// <summary>The error.</summary>
    [Parameter]
    [EditorRequired]
    public required Exception Of { get; set; }
}
