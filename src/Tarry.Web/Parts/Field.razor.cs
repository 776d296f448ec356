using Microsoft.AspNetCore.Components;

namespace Tarry.Web.Parts;

/// <summary>A labelled input of a form.</summary>
public sealed partial class Field
{
    /// <summary>Its id in the page.</summary>
    [Parameter]
    [EditorRequired]
    public required string Id { get; set; }

    /// <summary>What is to be entered.</summary>
    [Parameter]
    [EditorRequired]
    public required string Label { get; set; }

    /// <summary>What is entered.</summary>
    [Parameter]
    public string? Value { get; set; }

    /// <summary>Told of what was entered.</summary>
    [Parameter]
    public EventCallback<string?> ValueChanged { get; set; }

    /// <summary>What helps to enter it.</summary>
    [Parameter]
    public string? Hint { get; set; }

    /// <summary>What is wrong with it, and what to do; null where nothing is.</summary>
    [Parameter]
    public string? Wrong { get; set; }

    /// <summary>The values to choose from, with their texts; null where anything can be entered.</summary>
    [Parameter]
    public IEnumerable<(string Value, string Text)>? Choices { get; set; }

    /// <summary>Values that may be meant, where anything can be entered.</summary>
    [Parameter]
    public IEnumerable<string>? Suggestions { get; set; }

    /// <summary>The type of the input.</summary>
    [Parameter]
    public string Type { get; set; } = "text";

    /// <summary>Which keys a phone offers.</summary>
    [Parameter]
    public string? InputMode { get; set; }

    /// <summary>What stands in it while it is empty: what is taken then.</summary>
    [Parameter]
    public string? Placeholder { get; set; }

    /// <summary>How many lines it has.</summary>
    [Parameter]
    public int Lines { get; set; } = 1;

    private string? Note => (Wrong ?? Hint) is null ? null : $"{Id}-note";

    // The hint stands inside the label too, and would be read as part of the name.
    private string NameId => $"{Id}-name";

    private string? Invalid => Wrong is null ? null : "true";

    private Task Changed(ChangeEventArgs change) => ValueChanged.InvokeAsync(change.Value as string);
}
