using Microsoft.AspNetCore.Components;
using Tarry.Studies.StudyFiles;

namespace Tarry.Web.Bench;

/// <summary>The order of one sitting, worked through step by step.</summary>
public sealed partial class OrderPanel
{
    private static readonly string[] Shown = ["device", "unit", "link", "layer"];

    /// <summary>The order.</summary>
    [Parameter]
    [EditorRequired]
    public required SittingOrder Order { get; set; }

    /// <summary>The study's conditions.</summary>
    [Parameter]
    [EditorRequired]
    public required IReadOnlyList<ConditionEntry> Conditions { get; set; }

    /// <summary>The study's reference; null for none.</summary>
    [Parameter]
    public string? Reference { get; set; }

    /// <summary>Whether a run is on.</summary>
    [Parameter]
    public bool IsBusy { get; set; }

    /// <summary>The address of the bench with another sitting.</summary>
    [Parameter]
    [EditorRequired]
    public required Func<string, string> SittingAddress { get; set; }

    /// <summary>Called to begin a step.</summary>
    [Parameter]
    public EventCallback<SittingStep> OnBegin { get; set; }

    private string Described(string condition)
    {
        var factors = Conditions.FirstOrDefault(entry => entry.Id == condition)?.Factors;
        var known = factors is null ? [] : Shown.Where(name => factors.TryGetValue(name, out var level) && level != "none").Select(name => $"{name} {factors[name]}");
        return string.Join(", ", known) is { Length: > 0 } text ? $" ({text})" : "";
    }
}
