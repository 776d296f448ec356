using System.Xml.Linq;
using Microsoft.AspNetCore.Components;

namespace Tarry.Web.Parts;

/// <summary>A section of the report, as it is written there.</summary>
public sealed partial class Written
{
    /// <summary>The section; nothing is shown where it is null.</summary>
    [Parameter]
    [EditorRequired]
    public required XElement? Section { get; set; }
}
