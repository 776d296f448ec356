using Tarry.Findings;
using Tarry.Reports.Figures;

namespace Tarry.Reports.Pictures;

/// <summary>Every figure of a study in every theme, for those who show it elsewhere.</summary>
public static class FigureSet
{
    private static readonly (string Name, Func<FindingsDocument, FigureStyle, string> Draw, Func<FindingsDocument, bool> IsWorthDrawing)[] Figures =
    [
        ("standing", StandingFigure.Draw, Always),
        ("ridge", RidgeFigure.Draw, Always),
        ("ladder", LadderFigure.Draw, Always),
        ("sessions", SessionsFigure.Draw, Always),
        ("layer-cost", LayerCostFigure.Draw, LayerCostFigure.IsWorthDrawing),
        ("fold", FoldFigure.Draw, FoldFigure.IsWorthDrawing),
        ("device-only", DeviceOnlyFigure.Draw, DeviceOnlyFigure.IsWorthDrawing),
        ("run-chart", RunChartFigure.Draw, RunChartFigure.IsWorthDrawing),
        ("play", PlayCurveFigure.Draw, document => document.Play is not null),
        ("report-streams", ReportStreamFigure.Draw, ReportStreamFigure.IsWorthDrawing),
    ];

    private static readonly (string Name, FigureTheme Theme)[] Themes =
    [
        ("light", FigureTheme.Light),
        ("dark", FigureTheme.Dark),
        ("light-transparent", FigureTheme.LightTransparent),
        ("dark-transparent", FigureTheme.DarkTransparent),
    ];

    /// <summary>The drawings; none where the study has neither a condition with data nor a report stream.</summary>
    public static IReadOnlyList<FigureDrawing> Of(FindingsDocument document)
    {
        ArgumentNullException.ThrowIfNull(document);
        return [.. Figures.Where(figure => figure.IsWorthDrawing(document)).SelectMany(figure => Themes.Select(theme => new FigureDrawing(
            $"{figure.Name}-{theme.Name}",
            figure.Draw(document, FigureStyle.Video with { Theme = theme.Theme }),
            theme.Theme)))];
    }

    private static bool Always(FindingsDocument document) => document.Conditions.Count > 0;
}
