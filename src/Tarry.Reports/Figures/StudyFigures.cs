using Tarry.Findings;

namespace Tarry.Reports.Figures;

/// <summary>Which figures a study has, in the order in which they are shown.</summary>
public static class StudyFigures
{
    private static readonly (StudyFigure Figure, Func<FindingsDocument, bool> IsWorthDrawing)[] All =
    [
        (new("standing", FigurePart.Latencies, "The standing: conditions from soonest to latest mean. The numbers are in the table of results.", StandingFigure.Build), HasConditions),
        (new("ridge", FigurePart.Latencies, "Where the latencies of each condition fall, and how far the latest reach.", RidgeFigure.Build), HasConditions),
        (new("ladder", FigurePart.Latencies, "The ladder of quantiles: how late the middle, the later quarter and the latest trials of each condition are.", LadderFigure.Build), HasConditions),
        (new("sessions", FigurePart.Latencies, "The sessions: how well the sittings of each condition agree.", SessionsFigure.Build), HasConditions),
        (new("layer-cost", FigurePart.Latencies, "What each layer costs, against the margin. The numbers are in the table of layers.", LayerCostFigure.Build), LayerCostFigure.IsWorthDrawing),
        (new("fold", FigurePart.Latencies, "The fold: how latency depends on when in the report interval the press came.", FoldFigure.Build), FoldFigure.IsWorthDrawing),
        (new("device-only", FigurePart.Latencies, "The device alone: what is left of each condition's latencies when the chain, as the reference measured it, is taken out.", DeviceOnlyFigure.Build), DeviceOnlyFigure.IsWorthDrawing),
        (new("run-chart", FigurePart.Latencies, "The run chart: latencies in the order of trials, so that warming up, a change or a disturbed sitting is seen.", RunChartFigure.Build), RunChartFigure.IsWorthDrawing),
        (new("play", FigurePart.Latencies, "The play curve: how often a press hits a timing window once the constant part of the delay is learned.", PlayCurveFigure.Build), document => document.Play is not null),
        (new("report-streams", FigurePart.Reports, "The report streams: how far apart the reports of each device came. The numbers are in the table of reports.", ReportStreamFigure.Build), ReportStreamFigure.IsWorthDrawing),
        (new("stick-rose", FigurePart.Sticks, "The rose: how far each stick's turn departs from its circle, over angle.", StickRoseFigure.Build), StickRoseFigure.IsWorthDrawing),
        (new("stick-rest", FigurePart.Sticks, "Where each stick rests when nobody touches it.", RestCloudFigure.Build), RestCloudFigure.IsWorthDrawing),
        (new("stick-return", FigurePart.Sticks, "Where each stick comes to rest after it is let go, by the side from which it came.", ReturnFigure.Build), ReturnFigure.IsWorthDrawing),
        (new("stick-spectrum", FigurePart.Sticks, "How the noise of each axis at rest is spread over frequency, and tones that stand out of it.", RestSpectrumFigure.Build), RestSpectrumFigure.IsWorthDrawing),
        (new("stick-stops", FigurePart.Sticks, "How far each stick errs in direction at stops of known angle. The numbers are in the table of stops.", StopErrorFigure.Build), StopErrorFigure.IsWorthDrawing),
        (new("stick-linearity", FigurePart.Sticks, "How far what each axis says departs from its best straight line.", NonLinearityFigure.Build), NonLinearityFigure.IsWorthDrawing),
        (new("stick-reshaping", FigurePart.Sticks, "What each layer does to positions: along an axis, and by direction.", ReshapingFigure.Build), ReshapingFigure.IsWorthDrawing),
    ];

    /// <summary>The figures that say something of these findings; none where the study has no data.</summary>
    public static IReadOnlyList<StudyFigure> Of(FindingsDocument document)
    {
        ArgumentNullException.ThrowIfNull(document);
        return [.. All.Where(one => one.IsWorthDrawing(document)).Select(one => one.Figure)];
    }

    private static bool HasConditions(FindingsDocument document) => document.Conditions.Count > 0;
}
