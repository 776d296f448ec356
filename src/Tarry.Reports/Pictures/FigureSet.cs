using Tarry.Findings;
using Tarry.Reports.Figures;

namespace Tarry.Reports.Pictures;

/// <summary>The figures of a study in every theme, for those who show it elsewhere.</summary>
public static class FigureSet
{
    private static readonly (string Name, FigureTheme Theme)[] Themes =
    [
        ("light", FigureTheme.Light),
        ("dark", FigureTheme.Dark),
        ("light-transparent", FigureTheme.LightTransparent),
        ("dark-transparent", FigureTheme.DarkTransparent),
    ];

    /// <summary>The drawings; none where the study has no data.</summary>
    /// <param name="document">What is drawn.</param>
    /// <param name="names">Which figures, by name; null for all.</param>
    public static IReadOnlyList<FigureDrawing> Of(FindingsDocument document, IReadOnlyCollection<string>? names = null) =>
    [
        .. StudyFigures.Of(document)
            .Where(figure => names?.Contains(figure.Name) != false)
            .SelectMany(figure => Themes.Select(theme => new FigureDrawing(
                $"{figure.Name}-{theme.Name}",
                figure.Draw(document, FigureStyle.Video with { Theme = theme.Theme }),
                theme.Theme))),
    ];
}
