using System.Globalization;
using Tarry.Reports.Figures;

namespace Tarry.Reports.Tests.Figures;

public sealed class PaletteTests
{
    // WCAG 2.2, success criterion 1.4.3: text has a contrast of at least 4.5 to 1.
    [Theory]
    [InlineData("ink", "paper", 4.5)]
    [InlineData("soft", "paper", 4.5)]
    [InlineData("soft", "band", 4.5)]
    [InlineData("reference", "paper", 4.5)]
    [InlineData("reference", "band", 4.5)]
    [InlineData("mark", "paper", 4.5)]
    // Success criterion 1.4.11: graphical objects have at least 3 to 1.
    [InlineData("mark", "pale", 3)]
    [InlineData("mark", "band", 3)]
    public void Colours_InBothThemes_HaveTheContrastOfTheGuideline(string front, string back, double least)
    {
        foreach (var dark in new[] { false, true })
        {
            Assert.True(Contrast(Colour(front, dark), Colour(back, dark)) >= least, $"{front} on {back}, dark: {dark}");
        }
    }

    [Fact]
    public void Contrast_BlackOnWhite_IsTwentyOne() => Assert.Equal(21, Contrast("#000000", "#ffffff"), 1e-9); // WCAG 2.2, definition of contrast ratio: 1 to 21

    // Viénot, Brettel and Mollon 1999: in linear RGB a protanope sees (R', G') = 0.11238 R + 0.88762 G, a deuteranope 0.29275 R + 0.70725 G (from memory);
    // blue stays. Mark and reference then still differ in blue against yellow.
    [Theory]
    [InlineData(0.11238)]
    [InlineData(0.29275)]
    public void MarkAndReference_ToRedGreenBlindReaders_DifferInBlueAgainstYellow(double redShare)
    {
        foreach (var dark in new[] { false, true })
        {
            var mark = BlueAgainstYellow(Colour("mark", dark), redShare);
            var reference = BlueAgainstYellow(Colour("reference", dark), redShare);
            Assert.True(mark > 0 && reference < 0, $"mark {mark}, reference {reference}, dark: {dark}");
        }
    }

    private static string Colour(string role, bool dark) => Palette.Colour(role, dark);

    private static double BlueAgainstYellow(string colour, double redShare)
    {
        var (red, green, blue) = Linear(colour);
        return blue - ((redShare * red) + ((1 - redShare) * green));
    }

    private static double Contrast(string first, string second)
    {
        var (lighter, darker) = (Math.Max(Luminance(first), Luminance(second)), Math.Min(Luminance(first), Luminance(second)));
        return (lighter + 0.05) / (darker + 0.05);
    }

    private static double Luminance(string colour)
    {
        var (red, green, blue) = Linear(colour);
        return (0.2126 * red) + (0.7152 * green) + (0.0722 * blue);
    }

    private static (double Red, double Green, double Blue) Linear(string colour)
    {
        double Channel(int index)
        {
            var share = int.Parse(colour.AsSpan(1 + (2 * index), 2), NumberStyles.HexNumber, CultureInfo.InvariantCulture) / 255.0;
            return share <= 0.04045 ? share / 12.92 : Math.Pow((share + 0.055) / 1.055, 2.4);
        }

        return (Channel(0), Channel(1), Channel(2));
    }
}
