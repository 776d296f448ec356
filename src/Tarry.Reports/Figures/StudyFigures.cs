using Tarry.Findings;

namespace Tarry.Reports.Figures;

/// <summary>Which figures a study has, in the order in which they are shown.</summary>
public static class StudyFigures
{
    /// <summary>That of the report streams, which stands beside their table.</summary>
    public static StudyFigure ReportStreams { get; } = new("report-streams", "The report streams: how far apart the reports of each device came. The numbers are in the table of reports.", ReportStreamFigure.Build, ReportStreamFigure.Draw);

    private static readonly (StudyFigure Figure, Func<FindingsDocument, bool> IsWorthDrawing)[] All =
    [
        (new("standing", "The standing: conditions from soonest to latest mean. The numbers are in the table of results.", StandingFigure.Build, StandingFigure.Draw), Always),
        (new("ridge", "Where the latencies of each condition fall, and how far the latest reach.", RidgeFigure.Build, RidgeFigure.Draw), Always),
        (new("ladder", "The ladder of quantiles: how late the middle, the later quarter and the latest trials of each condition are.", LadderFigure.Build, LadderFigure.Draw), Always),
        (new("sessions", "The sessions: how well the sittings of each condition agree.", SessionsFigure.Build, SessionsFigure.Draw), Always),
        (new("layer-cost", "What each layer costs, against the margin. The numbers are in the table of layers.", LayerCostFigure.Build, LayerCostFigure.Draw), LayerCostFigure.IsWorthDrawing),
        (new("fold", "The fold: how latency depends on when in the report interval the press came.", FoldFigure.Build, FoldFigure.Draw), FoldFigure.IsWorthDrawing),
        (new("device-only", "The device alone: what is left of each condition's latencies when the chain, as the reference measured it, is taken out.", DeviceOnlyFigure.Build, DeviceOnlyFigure.Draw), DeviceOnlyFigure.IsWorthDrawing),
        (new("run-chart", "The run chart: latencies in the order of trials, so that warming up, a change or a disturbed sitting is seen.", RunChartFigure.Build, RunChartFigure.Draw), RunChartFigure.IsWorthDrawing),
        (new("play", "The play curve: how often a press hits a timing window once the constant part of the delay is learned.", PlayCurveFigure.Build, PlayCurveFigure.Draw), document => document.Play is not null),
        (ReportStreams, ReportStreamFigure.IsWorthDrawing),
    ];

    /// <summary>The figures that say something of these findings; none where neither a condition nor a report stream has data.</summary>
    public static IReadOnlyList<StudyFigure> Of(FindingsDocument document)
    {
        ArgumentNullException.ThrowIfNull(document);
        return [.. All.Where(one => one.IsWorthDrawing(document)).Select(one => one.Figure)];
    }

    private static bool Always(FindingsDocument document) => document.Conditions.Count > 0;
}
