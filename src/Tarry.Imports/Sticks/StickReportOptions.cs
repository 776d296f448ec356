using Tarry.Studies.Sticks;

namespace Tarry.Imports.Sticks;

/// <summary>Which fields of a device's reports are a stick's axes. See <c>docs/formats/stick.md</c>.</summary>
public sealed record StickReportOptions
{
    /// <summary>The column of the field of the x axis; null for the one with the usage X (page 1, 0x30).</summary>
    public string? XField { get; init; }

    /// <summary>The column of the field of the y axis; null for the one with the usage Y (page 1, 0x31).</summary>
    public string? YField { get; init; }

    /// <summary>The range of the x axis in place of the field's logical range; null for that.</summary>
    public StickRange? X { get; init; }

    /// <summary>The range of the y axis likewise, as the device has it.</summary>
    public StickRange? Y { get; init; }

    /// <summary>The levels that stood for the wiper of x, in order of time; none where nothing is known of them.</summary>
    public IReadOnlyList<LevelChange> Levels { get; init; } = [];

    /// <summary>The standard uncertainty of the levels, as a share of the supply; null where not stated.</summary>
    public double? LevelUncertainty { get; init; }

    /// <summary>Which way y grows in the reports.</summary>
    public VerticalDirection Vertical { get; init; } = VerticalDirection.Down;
}
