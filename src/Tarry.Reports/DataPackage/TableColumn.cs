namespace Tarry.Reports.DataPackage;

/// <summary>A column of a published table, as its Table Schema field says it.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Type">The Table Schema type: <c>string</c>, <c>integer</c>, <c>number</c> or <c>boolean</c>.</param>
/// <param name="Description">What it holds.</param>
/// <param name="Unit">Its unit, where it has one.</param>
/// <param name="Required">Whether it is never empty.</param>
/// <param name="Minimum">The least value, where there is one.</param>
/// <param name="Maximum">The greatest value, where there is one.</param>
/// <param name="Levels">The only values, where they are few.</param>
internal sealed record TableColumn(
    string Name,
    string Type,
    string Description,
    string? Unit = null,
    bool Required = false,
    double? Minimum = null,
    double? Maximum = null,
    IReadOnlyList<string>? Levels = null);
