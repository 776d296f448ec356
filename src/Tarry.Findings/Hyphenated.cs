using System.Text;

namespace Tarry.Findings;

/// <summary>Names of enumerations as they stand in JSON: words with hyphens, in lower case.</summary>
internal static class Hyphenated
{
    public static string Name(string pascalCase)
    {
        var text = new StringBuilder(pascalCase.Length + 4);
        foreach (var letter in pascalCase)
        {
            if (char.IsUpper(letter) && text.Length > 0)
            {
                text.Append('-');
            }

            text.Append(char.ToLowerInvariant(letter));
        }

        return text.ToString();
    }
}
