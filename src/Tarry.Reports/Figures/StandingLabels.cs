using Tarry.Metrology;
using Tarry.Reports.Wording;

namespace Tarry.Reports.Figures;

/// <summary>The text of a row of the standing: rank, condition, mean with interval, sessions and trials.</summary>
internal static class StandingLabels
{
    /// <summary>Room for the numbers right of the marks.</summary>
    public static double RightColumn(IReadOnlyList<RankedRow> rows) => RowLabels.RightColumn(rows, Numbered, row => row.Basis);

    /// <summary>The middle of a row's marks.</summary>
    public static double MarksAt(RowLayout layout, double top) => layout.IsNarrow ? top + 3.35 : top + (layout.Pitch / 2);

    /// <summary>The text of a row.</summary>
    public static void Draw(Canvas canvas, RankedRow row, RowLayout layout, double top) =>
        RowLabels.Draw(canvas, row, layout, top, MarksAt(layout, top), Numbered(row), row.Basis);

    private static string Numbered(RankedRow row) => row.Mean is not { } mean ? "" : Numbered(mean);

    private static string Numbered(Estimate<Latency> mean) =>
        $"{EstimateWording.Value(mean, Quantity.Latency)} ({EstimateWording.Bounds(mean, Quantity.Latency)})";
}
