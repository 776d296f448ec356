using Spectre.Console;
using Tarry.Findings;
using Tarry.Findings.Conditions;
using Tarry.Findings.ReportIntervals;
using Tarry.Metrology;
using Tarry.Reports.Wording;
using Tarry.Statistics.SlotGrid;
using static System.FormattableString;

namespace Tarry.Output;

/// <summary>What the device alone does, as a table for a terminal.</summary>
internal static class DeviceText
{
    private const int MostDecimals = 6;

    private static readonly (string Name, Room Least, Func<ConditionFinding, Room, string> Cell)[] Columns =
    [
        ("condition", Room.Narrow, (condition, _) => condition.Id),
        ("report interval", Room.Narrow, Interval),
        ("a second", Room.Narrow, (condition, _) => ReportRate.Of(condition.ReportInterval)?.Value ?? ""),
        ("mean alone", Room.Narrow, (condition, room) => Own(condition, condition.DeviceOnly?.Mean, room)),
        ("sd alone", Room.Narrow, (condition, room) => Own(condition, condition.DeviceOnly?.StandardDeviation, room)),
        ("shape with the chain", Room.Wide, (condition, _) => condition.Shape is { } shape ? ShapeWording.Shape(shape) : ""),
        ("late lumps", Room.Wide, (condition, _) => ShapeWording.Lumps(condition.LateTail)),
    ];

    private enum Room
    {
        Narrow,
        Middling,
        Wide,
    }

    /// <summary>The table, or nothing where nothing is known of devices alone.</summary>
    public static void Write(FindingsDocument document, Terminal terminal)
    {
        var byId = document.Conditions.ToDictionary(condition => condition.Id);
        var ranked = document.Ranking.Select(rank => byId[rank.Id]).ToList();
        var conditions = ranked.Concat(document.Conditions.Except(ranked))
            .Where(condition => condition is { ReportInterval: not null } or { DeviceOnly: not null } or { Shape: not null })
            .ToList();
        if (!conditions.Exists(SaysSomething))
        {
            return;
        }

        terminal.Out.WriteLine("The device alone (ms, 95 % intervals)");
        FittedTable.Write(terminal, [.. new[] { Room.Wide, Room.Middling, Room.Narrow }.Select(room => Table(conditions, room))]);
        var clock = conditions.Max(condition => condition.ReportInterval?.Clock.HalfWidthPpm ?? 0);
        terminal.Out.WriteLine(Invariant(
            $"Report interval: how far apart the report slots are, on the clock of the data, which may be off by {Numbers.Fixed(clock, Numbers.Decimals(clock))} parts per million. Mean and sd alone: of the delay in excess of the reference's fixed delay, the wait for the device's own slot inside."));
    }

    // A recording without press times and without a reference says nothing of devices alone, and a table of that is no use.
    private static bool SaysSomething(ConditionFinding condition) =>
        condition.DeviceOnly?.Mean is Estimate<LatencyDifference>
        || condition.ReportInterval is { Interval: not null } or { Unidentified.Reason: not (ReportIntervalReason.NoPressTimes or ReportIntervalReason.LatenciesAreIntervals or ReportIntervalReason.TooFewTrials) };

    private static Table Table(List<ConditionFinding> conditions, Room room)
    {
        // Without a late lump anywhere the column would stand empty.
        var columns = Columns.Where(column => column.Least <= room && conditions.Exists(condition => column.Cell(condition, room).Length > 0)).ToList();
        var table = FittedTable.New(columns.Select(column => column.Name));
        conditions.ForEach(condition => table.AddRow(FittedTable.Cells(columns.Select(column => column.Cell(condition, room)))));
        return table;
    }

    private static string Interval(ConditionFinding condition, Room room) => condition.ReportInterval switch
    {
        { Interval: { } interval } => EstimateText.Value(interval, value => value.Milliseconds, MostDecimals),
        { Unidentified: { } not } => room > Room.Narrow ? $"not identifiable: {ReportIntervalWording.Words(not.Reason)}" : "not identifiable",
        _ => "",
    };

    private static string Own(ConditionFinding condition, EstimateOutcome<LatencyDifference>? outcome, Room room) =>
        outcome is null ? condition.IsReference ? "is the reference" : ""
        : outcome is NotEnough<LatencyDifference> ? "not known"
        : room > Room.Narrow ? EstimateText.Of(outcome, value => value.Milliseconds)
        : EstimateText.Value(outcome, value => value.Milliseconds);
}
