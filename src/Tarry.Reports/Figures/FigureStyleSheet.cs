namespace Tarry.Reports.Figures;

/// <summary>The style sheet of figures.</summary>
public static class FigureStyleSheet
{
    private const string Rules =
        ".tarry-figure text{fill:$ink;font-family:system-ui,sans-serif;font-variant-numeric:tabular-nums}"
        + ".tarry-figure text.soft{fill:$soft}"
        + ".tarry-figure text.reference{fill:$reference}"
        + ".tarry-figure text.strong{font-weight:600}"
        + ".tarry-figure .paper{fill:$paper}"
        + ".tarry-figure .band{fill:$band}"
        + ".tarry-figure .pale{fill:$pale}"
        + ".tarry-figure .rule{stroke:$rule;fill:none}"
        + ".tarry-figure .axis{stroke:$soft;fill:none}"
        + ".tarry-figure .mark{stroke:$mark;fill:none}"
        + ".tarry-figure .mark-solid{fill:$mark;stroke:$paper}"
        + ".tarry-figure .mark-open{fill:$paper;stroke:$mark}"
        + ".tarry-figure .outline{fill:none;stroke:$mark}"
        + ".tarry-figure .reference-line{stroke:$reference;fill:none}"
        + ".tarry-figure .reference-solid{fill:$reference;stroke:$paper}"
        + ".tarry-figure .reference-open{fill:$paper;stroke:$reference}";

    // Where the ground is clear, bands are a veil of ink: a plain colour would cover what lies below.
    private const string ClearGround = ".tarry-figure .paper{fill:none}.tarry-figure .band{fill:$ink;fill-opacity:.06}";

    /// <summary>The rules for a theme: custom properties where the reader's system decides, plain colours where the theme is fixed, so that every renderer reads them.</summary>
    /// <remarks>A page whose content policy refuses style elements serves the rules of <see cref="FigureTheme.Automatic"/> as a file and draws figures as <see cref="FigureTheme.Inherited"/>. The rules of that theme are without the colours, which the page sets.</remarks>
    public static string For(FigureTheme theme) => theme switch
    {
        FigureTheme.Automatic =>
            $".tarry-figure{{{Palette.Properties(dark: false)}}}"
            + $"@media screen and (prefers-color-scheme:dark){{.tarry-figure{{{Palette.Properties(dark: true)}}}}}"
            + For(FigureTheme.Inherited),
        FigureTheme.Inherited => Resolve(Rules, role => $"var(--tarry-{role})"),
        FigureTheme.Light => Resolve(Rules, role => Palette.Colour(role, dark: false)),
        FigureTheme.Dark => Resolve(Rules, role => Palette.Colour(role, dark: true)),
        FigureTheme.LightTransparent => Resolve(Rules + ClearGround, role => Palette.Colour(role, dark: false)),
        FigureTheme.DarkTransparent => Resolve(Rules + ClearGround, role => Palette.Colour(role, dark: true)),
        _ => throw new ArgumentOutOfRangeException(nameof(theme), theme, "A theme without colours."),
    };

    /// <summary>For a page with figures of <see cref="FigureTheme.Inherited"/>: the colours for the whole page, light or dark as the reader's system prefers, and the figures' rules.</summary>
    public static string ForPage() =>
        $":root{{{Palette.Properties(dark: false)}}}@media screen and (prefers-color-scheme:dark){{:root{{{Palette.Properties(dark: true)}}}}}{For(FigureTheme.Inherited)}";

    private static string Resolve(string all, Func<string, string> colourOf) =>
        Palette.Colours.Aggregate(all, (rules, colour) => rules
            .Replace($"${colour.Role}}}", colourOf(colour.Role) + "}", StringComparison.Ordinal)
            .Replace($"${colour.Role};", colourOf(colour.Role) + ";", StringComparison.Ordinal));
}
