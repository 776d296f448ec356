using System.Text;

namespace Tarry.Imports.DelimitedText;

/// <summary>Text of a file as it may appear in a message: short, on one line, and harmless on a terminal.</summary>
internal static class Excerpt
{
    private const int Longest = 40;

    /// <summary>The text in quotation marks, cut where long.</summary>
    public static string Of(ReadOnlySpan<char> text)
    {
        var shown = new StringBuilder("'");
        foreach (var character in text[..Math.Min(text.Length, Longest)])
        {
            shown.Append(char.IsControl(character) ? '?' : character);
        }

        return shown.Append(text.Length > Longest ? "...'" : "'").ToString();
    }
}
