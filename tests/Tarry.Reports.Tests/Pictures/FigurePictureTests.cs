using System.Buffers.Binary;
using System.Xml.Linq;
using SkiaSharp;
using Tarry.Reports.Figures;
using Tarry.Reports.Pictures;
using Tarry.Reports.Tests.Figures;

namespace Tarry.Reports.Tests.Pictures;

public sealed class FigurePictureTests
{
    private static readonly IReadOnlyList<FigureDrawing> Drawings = FigureSet.Of(FigureTests.Studies["twelve"]);

    [Fact]
    public void Of_AnyStudy_DrawsEveryFigureInEveryFixedTheme()
    {
        string[] expected =
        [
            .. from figure in new[] { "standing", "ridge", "ladder", "sessions", "fold", "device-only", "run-chart", "play" }
               from theme in new[] { "light", "dark", "light-transparent", "dark-transparent" }
               select $"{figure}-{theme}",
        ];
        Assert.Equal(expected, Drawings.Select(drawing => drawing.Name));
        Assert.All(Drawings, drawing => Assert.DoesNotContain("var(", drawing.Svg, StringComparison.Ordinal));
        Assert.Empty(FigureSet.Of(FigureTests.Studies["empty"]));
    }

    // The header of a PNG: ISO/IEC 15948:2004, 11.2.2 (width and height at 16 and 20, colour type at 25: 2 without alpha, 6 with it).
    [Theory]
    [InlineData("standing-light", 2)]
    [InlineData("ridge-dark", 2)]
    [InlineData("ladder-light-transparent", 6)]
    [InlineData("sessions-dark-transparent", 6)]
    public void Png_BothSizes_HaveTheFramesOfVideo(string name, byte colourType)
    {
        IReadOnlyList<byte[]> pictures = Drawing(name).Png(1, 2);
        Assert.Equal([(1920, 1080), (3840, 2160)], pictures.Select(png => (
            BinaryPrimitives.ReadInt32BigEndian(png.AsSpan(16)),
            BinaryPrimitives.ReadInt32BigEndian(png.AsSpan(20)))));
        Assert.All(pictures, png => Assert.Equal(colourType, png[25]));
    }

    [Fact]
    public void Png_TransparentThemes_LeaveTheCornersClearAndTheOthersDoNot()
    {
        Assert.Equal(0, Corner("standing-light-transparent").Alpha);
        Assert.Equal(0, Corner("ridge-dark-transparent").Alpha);
        Assert.Equal(SKColor.Parse(Palette.Colour("paper", dark: false)), Corner("standing-light"));
        Assert.Equal(SKColor.Parse(Palette.Colour("paper", dark: true)), Corner("standing-dark"));

        static SKColor Corner(string name)
        {
            using var bitmap = SKBitmap.Decode(Drawing(name).Png(1)[0]);
            return bitmap.GetPixel(2, 2);
        }
    }

    [Fact]
    public void Png_DrawnTwice_HasTheSameBytes() => Assert.Equal(Drawing("ladder-light").Png(1)[0], Drawing("ladder-light").Png(1)[0]);

    [Fact]
    public void Png_WithItsTextTakenOut_IsAnotherPicture()
    {
        var drawing = Drawing("standing-light");
        var bare = XElement.Parse(drawing.Svg);
        bare.Descendants().Where(element => element.Name.LocalName == "text").Remove();
        Assert.NotEqual(drawing.Png(1)[0], FigurePicture.Png(bare.ToString(), transparent: false, 1)[0]);
    }

    [Fact]
    public void Png_NotADrawing_IsRefused() => Assert.ThrowsAny<Exception>(() => FigurePicture.Png("not a drawing", transparent: false, 1));

    // The fonts' own measures are the outside reference: TextFit, by which figures are laid out, must never be narrower.
    [Fact]
    public void TextFit_EveryTextOfEveryFigure_IsAtLeastAsWideAsTheFontDrawsIt()
    {
        var texts = Drawings.Where(drawing => drawing.Theme == FigureTheme.Light)
            .SelectMany(drawing => XElement.Parse(drawing.Svg).Descendants().Where(element => element.Name.LocalName == "text"))
            .Select(element => (Words: element.Nodes().OfType<XText>().Last().Value, Strong: element.Attribute("class")?.Value.Contains("strong", StringComparison.Ordinal) == true))
            .Distinct()
            .ToList();
        Assert.NotEmpty(texts);
        Assert.All(texts, text =>
        {
            using var font = new SKFont(InterFont.Instance.Of(text.Strong ? SKFontStyleWeight.SemiBold : SKFontStyleWeight.Normal), 100);
            var allowed = TextFit.Width(text.Words) * (text.Strong ? 1.1 : 1);
            Assert.True(font.MeasureText(text.Words) / 100 <= allowed, $"'{text.Words}' is {font.MeasureText(text.Words) / 100} em wide, laid out as {allowed}");
        });
    }

    [Fact]
    public void Inter_HasEveryCharacterOfTheFigures()
    {
        var characters = Drawings.SelectMany(drawing => XElement.Parse(drawing.Svg).Descendants().Where(element => element.Name.LocalName == "text"))
            .SelectMany(element => element.Value.EnumerateRunes())
            .Distinct();
        using var font = new SKFont(InterFont.Instance.Of(SKFontStyleWeight.Normal));
        Assert.All(characters, rune => Assert.True(font.ContainsGlyph(rune.Value), $"U+{rune.Value:X4}"));
    }

    private static FigureDrawing Drawing(string name) => Drawings.Single(drawing => drawing.Name == name);
}
