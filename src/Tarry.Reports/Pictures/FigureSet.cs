using Tarry.Findings;
using Tarry.Reports.Figures;

namespace Tarry.Reports.Pictures;

/// <summary>Every figure of a study in every theme, for those who show it elsewhere.</summary>
public static class FigureSet
{
    private static readonly (string Name, Func<FindingsDocument, FigureStyle, string> Draw)[] Figures =
    [
        ("standing", StandingFigure.Draw),
        ("ridge", RidgeFigure.Draw),
        ("ladder", LadderFigure.Draw),
        ("sessions", SessionsFigure.Draw),
        ("play", PlayCurveFigure.Draw),
    ];

    private static readonly (string Name, FigureTheme Theme)[] Themes =
    [
        ("light", FigureTheme.Light),
        ("dark", FigureTheme.Dark),
        ("light-transparent", FigureTheme.LightTransparent),
        ("dark-transparent", FigureTheme.DarkTransparent),
    ];

    /// <summary>The drawings; none where the study has no condition with data.</summary>
    public static IReadOnlyList<FigureDrawing> Of(FindingsDocument document)
    {
        ArgumentNullException.ThrowIfNull(document);
        return document.Conditions.Count == 0
            ? []
            : [.. Figures.Where(figure => figure.Name != "play" || document.Play is not null).SelectMany(figure => Themes.Select(theme => new FigureDrawing(
                $"{figure.Name}-{theme.Name}",
                figure.Draw(document, FigureStyle.Video with { Theme = theme.Theme }),
                theme.Theme)))];
    }
}
