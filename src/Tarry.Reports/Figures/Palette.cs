namespace Tarry.Reports.Figures;

/// <summary>The colours of figures and reports. Meaning is carried by blue against orange, which colour-blind readers tell, and never by colour alone.</summary>
internal static class Palette
{
    /// <summary>A colour's role, its light and its dark value.</summary>
    public static IReadOnlyList<(string Role, string Light, string Dark)> Colours { get; } =
    [
        ("paper", "#fdfcf9", "#15181b"),
        ("ink", "#1f2328", "#e8e6e0"),
        ("soft", "#555c64", "#a9afb6"),
        ("rule", "#d9d6ce", "#363c42"),
        ("band", "#f3f1ea", "#1d2125"),
        ("pale", "#bdd4e0", "#2d5266"),
        ("mark", "#14567c", "#8cc6e7"),
        ("reference", "#9c4700", "#f3a85c"),
    ];

    /// <summary>The colour of a role.</summary>
    public static string Colour(string role, bool dark)
    {
        var (_, light, darkValue) = Colours.Single(colour => colour.Role == role);
        return dark ? darkValue : light;
    }

    /// <summary>Declarations of the custom properties, such as <c>--tarry-ink:#1f2328;</c>.</summary>
    public static string Properties(bool dark) =>
        string.Concat(Colours.Select(colour => $"--tarry-{colour.Role}:{(dark ? colour.Dark : colour.Light)};"));
}
