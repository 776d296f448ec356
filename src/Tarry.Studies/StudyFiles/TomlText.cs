using System.Globalization;
using System.Text;

namespace Tarry.Studies.StudyFiles;

/// <summary>Values as TOML 1.0.0 writes them.</summary>
internal static class TomlText
{
    /// <summary>A basic string: quotes, with the escapes that TOML asks for.</summary>
    public static string Quoted(string text)
    {
        var quoted = new StringBuilder("\"");
        foreach (var character in text)
        {
            quoted.Append(character switch
            {
                '"' => "\\\"",
                '\\' => "\\\\",
                '\n' => "\\n",
                '\r' => "\\r",
                '\t' => "\\t",
                _ when char.IsControl(character) => $"\\u{(int)character:X4}",
                _ => character.ToString(),
            });
        }

        return quoted.Append('"').ToString();
    }

    /// <summary>A number, shortest form that reads back the same; whole ones without a point.</summary>
    public static string Number(double number)
    {
        return number.ToString("R", CultureInfo.InvariantCulture);
    }

    /// <summary>A key, bare where TOML allows it.</summary>
    public static string Key(string key) =>
        key.Length > 0 && key.All(character => char.IsAsciiLetterOrDigit(character) || character is '-' or '_') ? key : Quoted(key);
}
