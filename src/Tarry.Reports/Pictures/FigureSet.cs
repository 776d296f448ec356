using Tarry.Findings;
using Tarry.Reports.Figures;

namespace Tarry.Reports.Pictures;

/// <summary>Every figure of a study in every theme, for those who show it elsewhere.</summary>
public static class FigureSet
{
    private static readonly (string Name, Func<FindingsDocument, FigureStyle, string> Draw, Func<FindingsDocument, bool> IsWorthDrawing)[] Figures =
    [
        ("standing", StandingFigure.Draw, HasConditions),
        ("ridge", RidgeFigure.Draw, HasConditions),
        ("ladder", LadderFigure.Draw, HasConditions),
        ("sessions", SessionsFigure.Draw, HasConditions),
        ("layer-cost", LayerCostFigure.Draw, LayerCostFigure.IsWorthDrawing),
        ("fold", FoldFigure.Draw, FoldFigure.IsWorthDrawing),
        ("device-only", DeviceOnlyFigure.Draw, DeviceOnlyFigure.IsWorthDrawing),
        ("run-chart", RunChartFigure.Draw, RunChartFigure.IsWorthDrawing),
        ("play", PlayCurveFigure.Draw, document => document.Play is not null),
        ("stick-rose", StickRoseFigure.Draw, StickRoseFigure.IsWorthDrawing),
        ("stick-rest", RestCloudFigure.Draw, RestCloudFigure.IsWorthDrawing),
        ("stick-linearity", NonLinearityFigure.Draw, NonLinearityFigure.IsWorthDrawing),
        ("stick-reshaping", ReshapingFigure.Draw, ReshapingFigure.IsWorthDrawing),
    ];

    private static readonly (string Name, FigureTheme Theme)[] Themes =
    [
        ("light", FigureTheme.Light),
        ("dark", FigureTheme.Dark),
        ("light-transparent", FigureTheme.LightTransparent),
        ("dark-transparent", FigureTheme.DarkTransparent),
    ];

    /// <summary>The drawings; none where the study has no data.</summary>
    public static IReadOnlyList<FigureDrawing> Of(FindingsDocument document)
    {
        ArgumentNullException.ThrowIfNull(document);
        return
        [
            .. Figures.Where(figure => figure.IsWorthDrawing(document)).SelectMany(figure => Themes.Select(theme => new FigureDrawing(
                $"{figure.Name}-{theme.Name}",
                figure.Draw(document, FigureStyle.Video with { Theme = theme.Theme }),
                theme.Theme))),
        ];
    }

    private static bool HasConditions(FindingsDocument document) => document.Conditions.Count > 0;
}
