namespace Tarry.Reports.Figures;

/// <summary>The text of a row: rank, condition, and two lines of what its marks say.</summary>
internal static class RowLabels
{
    private const double SmallSize = 0.9;
    private const double NarrowSize = 0.85;

    /// <summary>Room for the two lines right of the marks.</summary>
    public static double RightColumn(IReadOnlyList<RankedRow> rows, Func<RankedRow, string> first, Func<RankedRow, string> second) => rows.Count == 0 ? 0 :
        Math.Max(rows.Max(row => TextFit.Width(first(row))), SmallSize * rows.Max(row => TextFit.Width(second(row))));

    /// <summary>Draws them: beside the marks, or above them where the figure is narrow.</summary>
    public static void Draw(Canvas canvas, RankedRow row, RowLayout layout, double top, double middle, string first, string second)
    {
        var name = row.Condition.IsReference ? "strong reference" : "strong";
        if (layout.IsNarrow)
        {
            var rank = row.RankRange.Length == 0 ? "" : $"rank {row.RankRange}";
            var rankRoom = (SmallSize * TextFit.Width(rank)) + 0.6;
            canvas.Text(layout.LabelLeft, top + 1.3, row.Condition.Id, name, room: layout.LabelRoom - rankRoom);
            canvas.Text(layout.Right, top + 1.3, rank, "soft", Anchor.End, SmallSize);
            var numbers = first.Length == 0 ? second : $"{first}; {second}";
            canvas.Text(layout.LabelLeft, top + 2.45, numbers, "soft", size: NarrowSize, room: layout.LabelRoom);
            return;
        }

        canvas.Text(RowLayout.Margin, middle + 0.35, row.RankRange, "soft", size: SmallSize);
        canvas.Text(layout.LabelLeft, middle + 0.35, row.Condition.Id, name, room: layout.LabelRoom);
        canvas.Text(layout.Right, middle - 0.15, first, anchor: Anchor.End);
        canvas.Text(layout.Right, middle + 0.95, second, "soft", Anchor.End, SmallSize);
    }
}
