using Tarry.Metrology;
using Tarry.Reports.Wording;

namespace Tarry.Reports.Figures;

/// <summary>The text of a row of the standing: rank, condition, mean with interval, sessions and trials.</summary>
internal static class StandingLabels
{
    private const double SmallSize = 0.9;

    /// <summary>Room for the numbers right of the marks.</summary>
    public static double RightColumn(IReadOnlyList<RankedRow> rows) => rows.Count == 0 ? 0 :
        Math.Max(rows.Max(row => TextFit.Width(Numbered(row))), SmallSize * rows.Max(row => TextFit.Width(row.Basis)));

    /// <summary>The middle of a row's marks.</summary>
    public static double MarksAt(RowLayout layout, double top) => layout.IsNarrow ? top + 3.35 : top + (layout.Pitch / 2);

    /// <summary>The text of a row.</summary>
    public static void Draw(Canvas canvas, RankedRow row, RowLayout layout, double top)
    {
        var name = row.Condition.IsReference ? "strong reference" : "strong";
        if (layout.IsNarrow)
        {
            var rank = row.RankRange.Length == 0 ? "" : $"rank {row.RankRange}";
            var rankRoom = (SmallSize * TextFit.Width(rank)) + 0.6;
            canvas.Text(layout.LabelLeft, top + 1.3, row.Condition.Id, name, room: layout.LabelRoom - rankRoom);
            canvas.Text(layout.Right, top + 1.3, rank, "soft", Anchor.End, SmallSize);
            var numbers = row.Mean is null ? row.Basis : $"{Numbered(row)}; {row.Basis}";
            canvas.Text(layout.LabelLeft, top + 2.45, numbers, "soft", size: 0.85, room: layout.LabelRoom);
            return;
        }

        var middle = MarksAt(layout, top);
        canvas.Text(RowLayout.Margin, middle + 0.35, row.RankRange, "soft", size: SmallSize);
        canvas.Text(layout.LabelLeft, middle + 0.35, row.Condition.Id, name, room: layout.LabelRoom);
        canvas.Text(layout.Right, middle - 0.15, Numbered(row), anchor: Anchor.End);
        canvas.Text(layout.Right, middle + 0.95, row.Basis, "soft", Anchor.End, SmallSize);
    }

    private static string Numbered(RankedRow row) => row.Mean is not { } mean ? "" : Numbered(mean);

    private static string Numbered(Estimate<Latency> mean) =>
        $"{EstimateWording.Value(mean, Quantity.Latency)} ({EstimateWording.Bounds(mean, Quantity.Latency)})";
}
