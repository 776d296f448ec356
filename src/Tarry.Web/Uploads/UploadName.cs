using System.Globalization;
using System.Text;

namespace Tarry.Web.Uploads;

/// <summary>The name under which a file that was brought in lies on the disk.</summary>
public static class UploadName
{
    private const int Longest = 100;
    private const string Unnamed = "unnamed";

    // Naming Files, Paths, and Namespaces, of the Windows documentation; '/' and '\' end what is a path.
    private const string NotInNames = "<>:\"|?*/\\";

    /// <summary>
    /// The last part of a given name without what no system's file names can hold, or what turns the direction of text; cut where long, its ending kept.
    /// Nothing of it leads out of a folder.
    /// </summary>
    public static string Of(string given)
    {
        ArgumentNullException.ThrowIfNull(given);
        var last = given.Split('/', '\\')[^1];
        var name = new StringBuilder();
        foreach (var rune in last.Normalize(NormalizationForm.FormC).EnumerateRunes())
        {
            name.Append(IsAllowed(rune) ? rune.ToString() : "_");
        }

        var text = name.ToString().Trim(' ', '.');
        return text.Length == 0 ? Unnamed : Cut(text);
    }

    private static bool IsAllowed(Rune rune) =>
        Rune.GetUnicodeCategory(rune) is not (UnicodeCategory.Control or UnicodeCategory.Format or UnicodeCategory.OtherNotAssigned or UnicodeCategory.PrivateUse or UnicodeCategory.LineSeparator or UnicodeCategory.ParagraphSeparator)
        && rune != Rune.ReplacementChar
        && !(rune.IsAscii && NotInNames.Contains((char)rune.Value, StringComparison.Ordinal));

    private static string Cut(string text)
    {
        var elements = new StringInfo(text);
        if (elements.LengthInTextElements <= Longest)
        {
            return text;
        }

        var ending = Path.GetExtension(text);
        ending = ending.Length <= 10 ? ending : "";
        return elements.SubstringByTextElements(0, Longest - ending.Length) + ending;
    }
}
