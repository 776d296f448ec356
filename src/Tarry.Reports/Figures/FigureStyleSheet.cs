namespace Tarry.Reports.Figures;

/// <summary>The style sheet inside every figure.</summary>
internal static class FigureStyleSheet
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

    /// <summary>Rules for a theme: custom properties where the reader's system decides, plain colours where the theme is fixed, so that every renderer reads them.</summary>
    public static string For(FigureTheme theme) => theme == FigureTheme.Automatic
        ? $".tarry-figure{{{Palette.Properties(dark: false)}}}"
          + $"@media screen and (prefers-color-scheme:dark){{.tarry-figure{{{Palette.Properties(dark: true)}}}}}"
          + Resolve(role => $"var(--tarry-{role})")
        : Resolve(role =>
        {
            var (_, light, dark) = Palette.Colours.Single(colour => colour.Role == role);
            return theme == FigureTheme.Dark ? dark : light;
        });

    private static string Resolve(Func<string, string> colourOf) =>
        Palette.Colours.Aggregate(Rules, (rules, colour) => rules
            .Replace($"${colour.Role}}}", colourOf(colour.Role) + "}", StringComparison.Ordinal)
            .Replace($"${colour.Role};", colourOf(colour.Role) + ";", StringComparison.Ordinal));
}
