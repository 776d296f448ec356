namespace Tarry.Studies.StudyFiles;

/// <summary>One <c>[[condition]]</c> of the study file: its name and its factors.</summary>
public sealed record ConditionEntry
{
    /// <summary>Its name, unique in the study.</summary>
    public required string Id { get; init; }

    /// <summary>
    /// Its factors and their levels, by the factor's key: <c>device</c>, <c>unit</c>, <c>device_firmware</c>, <c>link</c>,
    /// <c>layer</c>, <c>control</c>, <c>placement</c>, and any other key with a text value that the user wrote. In file order.
    /// </summary>
    public required IReadOnlyDictionary<string, string> Factors { get; init; }

    /// <summary>The report rate that the maker states.</summary>
    public double? NominalReportHz { get; init; }
}
