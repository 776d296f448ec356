using System.Text;

namespace Tarry.Reports.Wording;

/// <summary>Names and titles as they come, made safe to stand in a document.</summary>
public static class PlainText
{
    /// <summary>The text with what no document can hold (control characters, halves of surrogate pairs) or that turns the direction of what follows shown as U+FFFD, and line ends as spaces.</summary>
    public static string Clean(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        var clean = new StringBuilder(text.Length);
        foreach (var rune in text.EnumerateRunes())
        {
            clean.Append(rune.Value switch
            {
                '\n' or '\r' or '\t' => " ",
                < 0x20 or (>= 0x7F and < 0xA0) or 0xFFFE or 0xFFFF => "\uFFFD",
                (>= 0x202A and <= 0x202E) or (>= 0x2066 and <= 0x2069) => "\uFFFD",
                _ => rune.ToString(),
            });
        }

        return clean.ToString();
    }
}
