namespace Tarry.Reports.Figures;

/// <summary>Which colours a figure takes.</summary>
public enum FigureTheme
{
    /// <summary>Light or dark as the reader's system prefers; light in print.</summary>
    Automatic,

    /// <summary>From the page around it, which carries <see cref="FigureStyleSheet"/>: the figure brings no style of its own.</summary>
    Inherited,

    /// <summary>Always light.</summary>
    Light,

    /// <summary>Always dark.</summary>
    Dark,

    /// <summary>Dark marks on a clear ground, to lie over something light.</summary>
    LightTransparent,

    /// <summary>Light marks on a clear ground, to lie over something dark.</summary>
    DarkTransparent,
}
