using System.Reflection;
using SkiaSharp;
using Svg.Skia.TypefaceProviders;

namespace Tarry.Reports.Pictures;

/// <summary>The font of pictures: Inter, carried by the program, so that no font of the machine takes part.</summary>
/// <remarks>
/// Inter by The Inter Project Authors, SIL Open Font License 1.1. It lies in the resources of the package
/// Avalonia.Fonts.Inter (MIT), behind an index of paths, offsets and sizes; the package's code is not used.
/// </remarks>
internal sealed class InterFont : ITypefaceProvider
{
    private const int IndexVersion = 2;

    private readonly SKTypeface regular;
    private readonly SKTypeface semiBold;

    private InterFont(SKTypeface regular, SKTypeface semiBold) => (this.regular, this.semiBold) = (regular, semiBold);

    /// <summary>The font, read once.</summary>
    public static InterFont Instance => Loaded.Value;

    private static Lazy<InterFont> Loaded { get; } = new(Read);

    /// <summary>The typeface of a weight, whatever family is asked for.</summary>
    public SKTypeface Of(SKFontStyleWeight weight) => weight >= SKFontStyleWeight.SemiBold ? semiBold : regular;

    /// <inheritdoc />
    public SKTypeface FromFamilyName(string fontFamily, SKFontStyleWeight fontWeight, SKFontStyleWidth fontWidth, SKFontStyleSlant fontStyle) => Of(fontWeight);

    private static InterFont Read()
    {
        using var library = Assembly.GetExecutingAssembly().GetManifestResourceStream("Inter") ?? throw Missing("Inter");
        var bytes = new byte[library.Length];
        library.ReadExactly(bytes);
        using var resources = Assembly.Load(bytes).GetManifestResourceStream("!AvaloniaResources") ?? throw Missing("Inter's resources");
        return new(Typeface(resources, "/Assets/Inter-Regular.ttf"), Typeface(resources, "/Assets/Inter-SemiBold.ttf"));
    }

    private static SKTypeface Typeface(Stream resources, string path)
    {
        resources.Position = 0;
        using var reader = new BinaryReader(resources, System.Text.Encoding.UTF8, leaveOpen: true);
        var dataStart = sizeof(int) + reader.ReadInt32();
        if (reader.ReadInt32() != IndexVersion)
        {
            throw Missing("an index that this program reads");
        }

        for (var left = reader.ReadInt32(); left > 0; left--)
        {
            var (name, offset, size) = (reader.ReadString(), reader.ReadInt32(), reader.ReadInt32());
            if (name == path)
            {
                resources.Position = dataStart + offset;
                using var data = SKData.CreateCopy(reader.ReadBytes(size));
                return SKTypeface.FromData(data) ?? throw Missing(path);
            }
        }

        throw Missing(path);
    }

    private static InvalidOperationException Missing(string what) => new($"The font of pictures lacks {what}; build the program again.");
}
