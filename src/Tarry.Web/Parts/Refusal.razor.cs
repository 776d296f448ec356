using Microsoft.AspNetCore.Components;
using Tarry.Imports;
using Tarry.Studies;
using Tarry.Web.Importing;

namespace Tarry.Web.Parts;

/// <summary>Something that could not be done.</summary>
public sealed partial class Refusal
{
    /// <summary>Why.</summary>
    [Parameter]
    [EditorRequired]
    public required Exception Of { get; set; }

    private (string What, string? Where, string? Remedy) Told => Of switch
    {
        StudyException study => (study.Message, study.Place, study.Remedy),
        ImportException import => (ImportOption.InFormWords(import.Problem), import.Place, ImportOption.InFormWords(import.Remedy)),
        _ => (Of.Message, null, "See that the folder can be written to and the disk has room, then try again."),
    };
}
