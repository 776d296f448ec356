using Spectre.Console;
using Tarry.Findings;
using Tarry.Findings.Conditions;
using Tarry.Findings.ReportIntervals;
using Tarry.Metrology;
using Tarry.Reports.Wording;
using static System.FormattableString;

namespace Tarry.Output;

/// <summary>What the device alone does, as a table for a terminal.</summary>
internal static class DeviceText
{
    private const int MostDecimals = 6;

    private static readonly (string Name, Func<ConditionFinding, bool, string> Cell, Func<ConditionFinding, bool>? OnlyWhere, bool OnlyWhereWide)[] Columns =
    [
        ("condition", (condition, _) => condition.Id, null, false),
        ("report interval", Interval, null, false),
        ("a second", (condition, _) => ReportRate.Of(condition.ReportInterval)?.Value ?? "", null, false),
        ("mean alone", (condition, wide) => Own(condition, condition.DeviceOnly?.Mean, wide), null, false),
        ("sd alone", (condition, wide) => Own(condition, condition.DeviceOnly?.StandardDeviation, wide), null, false),
        ("shape with the chain", (condition, _) => ShapeWording.Shape(condition.Shape), condition => condition.Shape is not null, true),
        ("late lumps", (condition, _) => ShapeWording.Lumps(condition.LateTail), condition => ShapeWording.Lumps(condition.LateTail).Length > 0, true),
    ];

    /// <summary>The table, or nothing where nothing is known of devices alone.</summary>
    public static void Write(FindingsDocument document, Terminal terminal)
    {
        var byId = document.Conditions.ToDictionary(condition => condition.Id);
        var ranked = document.Ranking.Select(rank => byId[rank.Id]).ToList();
        var conditions = ranked.Concat(document.Conditions.Except(ranked))
            .Where(condition => condition is { ReportInterval: not null } or { DeviceOnly: not null } or { Shape: not null })
            .ToList();
        if (conditions.Count == 0)
        {
            return;
        }

        terminal.Out.WriteLine("The device alone (ms, 95 % intervals)");
        FittedTable.Write(terminal, Table(conditions, wide: true), () => Table(conditions, wide: false));
        var clock = conditions.Max(condition => condition.ReportInterval?.Clock.HalfWidthPpm ?? 0);
        terminal.Out.WriteLine(Invariant(
            $"Report interval: how far apart the report slots are, on the clock of the data, which may be off by {Numbers.Fixed(clock, Numbers.Decimals(clock))} parts per million. Mean and sd alone: of the delay in excess of the reference's fixed delay, the wait for the device's own slot inside."));
    }

    private static Table Table(List<ConditionFinding> conditions, bool wide)
    {
        var columns = Columns.Where(column => (wide || !column.OnlyWhereWide) && (column.OnlyWhere is null || conditions.Exists(condition => column.OnlyWhere(condition)))).ToList();
        var table = FittedTable.New(columns.Select(column => column.Name));
        conditions.ForEach(condition => table.AddRow(FittedTable.Cells(columns.Select(column => column.Cell(condition, wide)))));
        return table;
    }

    private static string Interval(ConditionFinding condition, bool wide) => condition.ReportInterval switch
    {
        { Interval: { } interval } => EstimateText.Value(interval, value => value.Milliseconds, MostDecimals),
        { Unidentified: { } not } => wide ? $"not identifiable: {ReportIntervalWording.Words(not.Reason)}" : "not identifiable",
        _ => "",
    };

    private static string Own(ConditionFinding condition, EstimateOutcome<LatencyDifference>? outcome, bool wide) =>
        outcome is null ? condition.IsReference ? "is the reference" : ""
        : outcome is NotEnough<LatencyDifference> ? "not known"
        : wide ? EstimateText.Of(outcome, value => value.Milliseconds)
        : EstimateText.Value(outcome, value => value.Milliseconds);
}
