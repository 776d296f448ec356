using System.Text.RegularExpressions;
using System.Xml.Linq;

namespace Tarry.Reports.Documents;

/// <summary>What the author says to readers: plain text, encoded like any other, under a heading that says whose words they are.</summary>
internal static partial class NotesSection
{
    /// <summary>The section, or null where there are no notes.</summary>
    public static XElement? Build(string? notes) => string.IsNullOrWhiteSpace(notes)
        ? null
        : Html.Section("notes", "Notes of the author", Paragraphs().Split(notes.ReplaceLineEndings("\n").Trim()).Select(Html.Paragraph));

    [GeneratedRegex(@"\n[ \t]*(?:\n[ \t]*)+")]
    private static partial Regex Paragraphs();
}
