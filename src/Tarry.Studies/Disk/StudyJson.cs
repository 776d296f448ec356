using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Serialization;

namespace Tarry.Studies.Disk;

/// <summary>How JSON is written in a study: snake_case, line feeds, other alphabets as they are.</summary>
internal static class StudyJson
{
    private static readonly JsonSerializerOptions _line = new()
    {
        PropertyNamingPolicy = JsonNamingPolicy.SnakeCaseLower,
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
        RespectNullableAnnotations = true,
        RespectRequiredConstructorParameters = true,
        Converters = { new JsonStringEnumConverter(JsonNamingPolicy.KebabCaseLower, allowIntegerValues: false) },
    };

    private static readonly JsonSerializerOptions _file = new(_line) { WriteIndented = true, NewLine = "\n" };

    /// <summary>A whole file, indented, with a line feed at the end.</summary>
    public static byte[] File<T>(T value) => [.. JsonSerializer.SerializeToUtf8Bytes(value, _file), (byte)'\n'];

    /// <summary>One line without its end.</summary>
    public static string Line<T>(T value) => JsonSerializer.Serialize(value, _line);

    /// <summary>Reads either back.</summary>
    /// <exception cref="JsonException">It is not JSON of this form.</exception>
    public static T Read<T>(ReadOnlySpan<byte> text) =>
        JsonSerializer.Deserialize<T>(text, _line) ?? throw new JsonException("There is nothing but null.");
}
