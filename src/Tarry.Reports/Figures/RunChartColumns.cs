using Tarry.Reports.Wording;

namespace Tarry.Reports.Figures;

/// <summary>The columns of a run chart: one a sitting, in the order of their names, all of one width.</summary>
internal sealed class RunChartColumns
{
    private const double Gap = 0.5;
    private const double LabelSize = 0.9;
    private readonly List<string> sittings;
    private readonly double left;
    private readonly double width;

    private RunChartColumns(List<string> sittings, double left, double width) => (this.sittings, this.left, this.width) = (sittings, left, width);

    /// <summary>Columns between two places.</summary>
    public static RunChartColumns Of(IReadOnlyList<RankedRow> rows, double left, double right)
    {
        List<string> sittings = [.. rows
            .SelectMany(row => row.Condition.Sessions)
            .Where(session => session.RunChart is not null)
            .Select(session => session.Key.Sitting)
            .Distinct()
            .Order(StringComparer.Ordinal)];
        return new(sittings, left, (right - left) / Math.Max(1, sittings.Count));
    }

    /// <summary>Where a trial of a sitting stands.</summary>
    /// <param name="sitting">The sitting.</param>
    /// <param name="share">How far the trial is through its session, from 0 to 1.</param>
    public double At(string sitting, double share) =>
        left + (width * sittings.IndexOf(sitting)) + (Gap / 2) + (share * (width - Gap));

    /// <summary>Draws what separates the columns, and their names below.</summary>
    public void Draw(Canvas canvas, double top, double bottom)
    {
        for (var index = 0; index <= sittings.Count; index++)
        {
            canvas.Line(left + (index * width), top, left + (index * width), bottom, "rule", 0.06);
        }

        var end = left + (width * Math.Max(1, sittings.Count));
        canvas.Line(left, bottom, end, bottom, "axis", 0.07);
        for (var index = 0; index < sittings.Count; index++)
        {
            canvas.Text(left + ((index + 0.5) * width), bottom + 1.15, sittings[index], "soft", Anchor.Middle, LabelSize, width - 0.3);
        }

        canvas.Text((left + end) / 2, bottom + 2.4, $"trials in order, {Numbers.Count(sittings.Count, "sitting")}", "soft", Anchor.Middle, LabelSize, end - left);
    }
}
