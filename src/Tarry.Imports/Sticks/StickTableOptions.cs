using Tarry.Imports.DelimitedText;
using Tarry.Studies.Sticks;

namespace Tarry.Imports.Sticks;

/// <summary>How a table of a stick's positions is to be read. See <c>docs/formats/stick.md</c>.</summary>
public sealed record StickTableOptions
{
    /// <summary>The range that the x axis can say; its step null where not stated.</summary>
    public required StickRange X { get; init; }

    /// <summary>The range of the y axis, as the file has it.</summary>
    public required StickRange Y { get; init; }

    /// <summary>Which way y grows in the file.</summary>
    public VerticalDirection Vertical { get; init; } = VerticalDirection.Up;

    /// <summary>The column of the time; null for <c>time</c> with or without a unit.</summary>
    public string? TimeColumn { get; init; }

    /// <summary>The unit of the times; null where the header's name ends with it.</summary>
    public TimeUnit? TimeUnit { get; init; }

    /// <summary>The column of the x axis; null for <c>x</c>.</summary>
    public string? XColumn { get; init; }

    /// <summary>The column of the y axis; null for <c>y</c>.</summary>
    public string? YColumn { get; init; }

    /// <summary>The column of the angle of the stop in degrees; null for <c>stimulus_deg</c>.</summary>
    public string? AngleColumn { get; init; }

    /// <summary>The column of the level of x; null for <c>stimulus_x</c>.</summary>
    public string? LevelXColumn { get; init; }

    /// <summary>The column of the level of y; null for <c>stimulus_y</c>.</summary>
    public string? LevelYColumn { get; init; }

    /// <summary>What a level of the whole supply is in the file: 1, or its volts.</summary>
    public double Supply { get; init; } = 1;

    /// <summary>The standard uncertainty of the stimulus: degrees, or a share of the supply; null where not stated.</summary>
    public double? StimulusUncertainty { get; init; }

    /// <summary>Delimiter, decimal comma, header and comments.</summary>
    public DelimitedTextOptions Text { get; init; } = new();
}
