namespace Tarry.Reports.Figures;

/// <summary>Which colours a figure takes.</summary>
public enum FigureTheme
{
    /// <summary>Light or dark as the reader's system prefers; light in print.</summary>
    Automatic,

    /// <summary>Always light.</summary>
    Light,

    /// <summary>Always dark.</summary>
    Dark,
}
