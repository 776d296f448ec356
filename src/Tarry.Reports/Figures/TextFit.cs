using System.Globalization;
using System.Text;

namespace Tarry.Reports.Figures;

/// <summary>How wide text is, near enough to keep it inside its room whatever sans-serif font draws it.</summary>
/// <remarks>Widths are rounded up from those of wide sans-serif fonts: a figure must not clip on a machine with other fonts.</remarks>
internal static class TextFit
{
    /// <summary>The width in em, estimated on the wide side.</summary>
    public static double Width(string text) => text.EnumerateRunes().Sum(WidthOf);

    /// <summary>The text, cut with an ellipsis where it is wider than the room.</summary>
    public static string Cut(string text, double roomEm)
    {
        if (Width(text) <= roomEm)
        {
            return text;
        }

        var cut = new StringBuilder();
        var room = roomEm - Width("…");
        var elements = StringInfo.GetTextElementEnumerator(text);
        while (elements.MoveNext() && (room -= Width((string)elements.Current)) >= 0)
        {
            cut.Append((string)elements.Current);
        }

        return cut.Append('…').ToString();
    }

    /// <summary>The text in lines that fit the room; a single longer word is cut.</summary>
    public static IReadOnlyList<string> Lines(string text, double roomEm)
    {
        var lines = new List<string>();
        var line = "";
        foreach (var word in text.Split(' '))
        {
            var longer = line.Length == 0 ? word : $"{line} {word}";
            if (line.Length > 0 && Width(longer) > roomEm)
            {
                lines.Add(line);
                longer = word;
            }

            line = Cut(longer, roomEm);
        }

        lines.Add(line);
        return lines;
    }

    private static double WidthOf(Rune rune) => rune.Value switch
    {
        'i' or 'j' or 'l' or '.' or ',' or ':' or ';' or '\'' or '|' or ' ' or '\u00A0' => 0.34,
        'f' or 'r' or 't' or 'I' or '(' or ')' or '-' or '/' => 0.42,
        'm' or 'w' or 'M' or 'W' or '@' or '%' => 0.96,
        >= 'A' and <= 'Z' => 0.72,
        < 0x2E80 => 0.65,
        _ => 1.1,
    };
}
