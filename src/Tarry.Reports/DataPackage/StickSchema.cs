using Tarry.Studies.Sticks;

namespace Tarry.Reports.DataPackage;

/// <summary>The columns of a published table of a stick's positions.</summary>
internal static class StickSchema
{
    public static IReadOnlyList<TableColumn> Of(StickSetup setup) =>
    [
        new("time_us", "number", "When the position came, from the session's beginning, on the clock of whoever recorded it.", "us", Required: true),
        Axis("x", "right", setup.X),
        Axis("y", "up", setup.Y),
        .. setup.Stimulus switch
        {
            StickStimulus.Angle => [new TableColumn("stimulus_deg", "number", "The angle of the stop that the stick stands against, counter-clockwise from right; empty while it stands against none.", "deg")],
            StickStimulus.Level => [Level("x"), Level("y")],
            _ => Array.Empty<TableColumn>(),
        },
    ];

    private static TableColumn Axis(string name, string greater, StickRange range) =>
        new(name, "number", $"The position along {name} as its source says it; {greater} is greater.", "counts", Required: true, Minimum: range.Minimum, Maximum: range.Maximum);

    private static TableColumn Level(string axis) =>
        new($"stimulus_{axis}", "number", $"The voltage that stands for the wiper of {axis}, as a share of the supply; empty where not known.", "share of the supply", Minimum: 0, Maximum: 1);
}
